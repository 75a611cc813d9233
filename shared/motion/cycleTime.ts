import type { Scene } from '../core/scene.ts';
import { moveTime } from './profile.ts';

/** How long the program takes until it repeats itself, s; null where it stands still. A sweep may be a few of its periods off, which it ends whole. */
export function cycleTime({ parameters: p, moves }: Scene): number | null {
  if (p.drive !== 'on') return null;
  switch (p.program) {
    case 'shuttle':
      return 2 * (moveTime(p.stroke, p) + p.dwell);
    case 'scan':
      return moveTime(p.stroke, { ...p, speed: p.scanSpeed }) + moveTime(p.stroke, p) + 2 * p.dwell;
    case 'step':
      return 2 * p.dwell;
    case 'staircase':
      return 2 * p.stairCount * (moveTime(p.stairStep, p) + p.dwell);
    case 'sine':
      return 1 / p.sineFrequency;
    case 'chirp':
    case 'stepped sine':
      return p.dwell + p.sweepTime;
    case 'force pulse':
      return p.dwell + p.pulseTime;
    case 'list':
      if (moves.length === 0) return null;
      return moves.reduce(
        (time, line, k) => time + moveTime(line.to - moves.at(k - 1)!.to, line) + line.dwell,
        0,
      );
    case 'hold':
      return null;
  }
}

import type { Scene } from '../../shared/scene.ts';
import { Program } from '../command/program.ts';
import { newProgramOutput } from '../command/setpoint.ts';

/** The axis settles, and is measured, for this long at least, s. */
const LEAST = 1;
/** Longer programs take too long to be run in full, s. */
const MOST = 1200;

/** Position-loop samples of a run: to settle, then whole cycles to measure. */
export interface CycleSpan {
  readonly settle: number;
  readonly measure: number;
}

/**
 * How many samples the cycles of a program take, found by walking through its commands alone. A program without cycles is measured
 * for a second.
 * @throws RangeError when a cycle is too long to be run
 */
export function cycleSpan(scene: Scene): CycleSpan {
  const { parameters: p, moves } = scene;
  const rate = p.currentRate / p.positionDivider;
  const periodic = p.process === 'sine' || p.process === 'pulse';
  const least = Math.round(Math.max(LEAST, periodic ? 1 / p.processFrequency : 0) * rate);
  if (p.program === 'hold' || (p.program === 'list' && moves.length === 0)) {
    return { settle: least, measure: least };
  }
  const program = new Program(p, moves);
  const out = newProgramOutput();
  let [cycle, settle] = [0, 0];
  for (let sample = 0; sample <= MOST * rate; sample++) {
    program.advance(sample / rate, out);
    if (out.cycle === cycle) continue;
    cycle = out.cycle;
    if (settle === 0 && sample >= least) settle = sample;
    else if (settle > 0 && sample - settle >= least) return { settle, measure: sample - settle };
  }
  throw new RangeError(
    `program: two cycles of the ${p.program} take longer than ${MOST / 60} minutes, too long for a time-lapse. ` +
      'Shorten the cycle or its dwell.',
  );
}

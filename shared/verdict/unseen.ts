import { ranged } from '../format.ts';
import type { Job } from '../study/job.ts';
import type { JudgedLane } from '../study/verdict.ts';
import { movesOf, positioningIn } from './read.ts';
import { named, sentence } from './words.ts';

/**
 * Settling is what the loop sees. Where the encoder sits on the motor and the tool, cold, lies in a wider band than the window, the lane is
 * in place for its drive and not for the work: that has to be said, and is no shortfall, since part of such a band can be calibrated away.
 */
export function unseenSentences({ values: { window } }: Job, lanes: readonly JudgedLane[]): string[] {
  return lanes.flatMap((lane) => {
    const settles = (movesOf(lane)?.settlingTime ?? null) !== null;
    const band = positioningIn(lane, 'cold')?.figures.accuracy ?? 0;
    if (lane.scene.parameters.encoderSide !== 'motor' || !settles || band <= 2 * window) return [];
    return sentence(
      `${named(lane)} settles into ±${ranged(window, 'm')} as its encoder on the motor sees it: the tool itself lies in a band of ` +
        `${ranged(band, 'm')} (bidirectional accuracy, cold)`,
    );
  });
}

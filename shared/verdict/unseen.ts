import { ranged } from '../core/format.ts';
import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';
import { movesOf, positioningIn } from './read.ts';
import { named, sentence } from './text.ts';

/**
 * Settling is what the loop sees. Where the encoder sits on the motor and the tool, cold, lies in a wider band than the window, the candidate is
 * in place for its drive and not for the work: that has to be said, and is no shortfall, since part of such a band can be calibrated away.
 */
export function unseenSentences(
  { values: { window } }: Job,
  candidates: readonly JudgedCandidate[],
): string[] {
  return candidates.flatMap((candidate) => {
    const settles = (movesOf(candidate)?.settlingTime ?? null) !== null;
    const band = positioningIn(candidate, 'cold')?.figures.accuracy ?? 0;
    if (candidate.scene.parameters.encoderSide !== 'motor' || !settles || band <= 2 * window) return [];
    return sentence(
      `${named(candidate)} settles into ±${ranged(window, 'm')} as its encoder on the motor sees it: the tool itself lies in a band of ` +
        `${ranged(band, 'm')} (bidirectional accuracy, cold)`,
    );
  });
}

import type { LapseSample } from '../../../shared/protocol/timeLapse.ts';
import type { MoveOutcome } from '../../../shared/study/outcome.ts';
import type { JudgedCandidate } from '../../../shared/verdict/judgement.ts';

export function relettered(
  candidate: JudgedCandidate,
  letter: string,
  title = candidate.title,
): JudgedCandidate {
  return { ...candidate, letter, title, scene: { ...candidate.scene, title } };
}

export function withMoves(candidate: JudgedCandidate, moves: Partial<MoveOutcome>): JudgedCandidate {
  return { ...candidate, outcome: { ...candidate.outcome, moves: { ...candidate.outcome.moves, ...moves } } };
}

/** Its speed ripple, from a cause with a period. */
export function withRipple(
  candidate: JudgedCandidate,
  peak: number,
  cause: string | null = null,
  period = 0.01,
): JudgedCandidate {
  const { accuracy } = candidate.outcome;
  if ('trip' in accuracy.ripple) throw new Error('the recorded scan trips');
  const ripple = {
    ...accuracy.ripple,
    peak,
    inBand: { ...accuracy.ripple.inBand, peak },
    lines: [{ period, amplitude: peak, inBand: peak, cause }],
  };
  return { ...candidate, outcome: { ...candidate.outcome, accuracy: { ...accuracy, ripple } } };
}

/** Energy of a cycle, everything else of it as it was. */
export function withEnergy(candidate: JudgedCandidate, drawn: number): JudgedCandidate {
  const { accuracy } = candidate.outcome;
  const energy = { ...accuracy.energy, drawn, returned: 0 };
  return { ...candidate, outcome: { ...candidate.outcome, accuracy: { ...accuracy, energy } } };
}

/** The samples of its day, changed. */
export function withDay(
  candidate: JudgedCandidate,
  change: (sample: LapseSample) => LapseSample,
): JudgedCandidate {
  const { heat } = candidate.outcome;
  const asSet = { ...heat.asSet, samples: heat.asSet.samples.map(change) };
  return { ...candidate, outcome: { ...candidate.outcome, heat: { ...heat, asSet } } };
}

import { at } from '../../core/at.ts';
import type { Scene } from '../../core/scene.ts';
import { sizeCandidate } from '../../sizing/sizeCandidate.ts';
import type { Job } from '../../study/job.ts';
import type { MoveOutcome } from '../../study/outcome.ts';
import type { Ranges } from '../../study/ranges.ts';
import type { JudgedCandidate } from '../judgement.ts';
import { rank } from '../ranking.ts';
import { shortfallsOf, simulatedShortfalls } from '../requirements.ts';
import { costsOf } from '../rows/costs.ts';
import type { Confidence, Counted } from './confidence.ts';
import { Count } from './count.ts';
import { type Draw, drawsOf } from './draws.ts';
import { heatScaled } from './heatScaled.ts';

/** Jobs that are drawn by calculation, which takes seconds. */
export const CALCULATED = 1000;

/** How many jobs are drawn. */
export interface ConfidenceAsked {
  readonly ranges: Ranges;
  /** By calculation. */
  readonly calculated: number;
  /** Of these, the first ones whose moves are simulated too; 0: none. */
  readonly simulated: number;
  /** What the calculation came to, where it was made before within the same ranges. */
  readonly known?: Counted | null;
}

/** Rows that the draws carry; whoever falls short in another one is out whatever is drawn. */
const CARRIED: readonly string[] = ['winding', 'growth', 'settling'];
/** Draws between two looks at what they come to. */
const EVERY = 20;

/**
 * With what probability the choice holds when inputs lie within their ranges, as more and more jobs are drawn; the last one is the whole.
 *
 * @param movesOf simulates the moves of an axis
 */
export function* findConfidence(
  job: Job,
  candidates: readonly JudgedCandidate[],
  asked: ConfidenceAsked,
  movesOf: (scene: Scene) => MoveOutcome,
): Generator<Confidence> {
  const { ranges } = asked;
  const choice = rank(job, candidates).first;
  const drawn = drawsOf(job, candidates, ranges);
  const stated = candidates.map((candidate) => ({
    candidate,
    isOut: simulatedShortfalls(job, candidate).some(({ row }) => !CARRIED.includes(row)),
    purchase: costsOf(candidate, job).purchase,
  }));
  const found = (calculated: Counted, simulated: Counted | null): Confidence => ({
    ranges,
    calculated,
    simulated,
    asked: { calculated: asked.calculated, simulated: asked.simulated },
  });
  const count = function* (
    total: number,
    of: (draw: Draw) => JudgedCandidate[],
    told: (counted: Counted) => Confidence,
  ): Generator<Confidence, Counted> {
    const counts = new Count(choice);
    for (let n = 0; n < total; n++) {
      const draw = drawn(n);
      const turnedOut = of(draw);
      counts.add(turnedOut, rank(draw.job, turnedOut));
      if ((n + 1) % EVERY === 0 && n + 1 < total) yield told(counts.counted());
    }
    return counts.counted();
  };
  const calculate = (draw: Draw) =>
    stated.map(({ candidate, isOut, purchase }, place) =>
      isOut ? candidate : calculated(candidate, purchase, draw, place),
    );
  const simulate = (draw: Draw) =>
    calculate(draw).map((candidate, place) => {
      // Whoever falls short by something else is out, however it settles.
      if (at(stated, place).isOut || shortfallsOf(draw.job, candidate).some(({ row }) => row !== 'settling'))
        return candidate;
      const moves = movesOf(at(draw.drives, place).simulated);
      return { ...candidate, outcome: { ...candidate.outcome, moves } };
    });
  const whole = asked.known ?? (yield* count(asked.calculated, calculate, (counted) => found(counted, null)));
  yield found(whole, null);
  if (asked.simulated === 0) return;
  yield found(whole, yield* count(asked.simulated, simulate, (counted) => found(whole, counted)));
}

/** A candidate as it was drawn: its sizing anew, its heat scaled by that, its price; its moves as they were simulated. */
function calculated(
  candidate: JudgedCandidate,
  purchase: number,
  { job, drives }: Draw,
  place: number,
): JudgedCandidate {
  const { calculated: scene, price } = at(drives, place);
  const sizing = sizeCandidate(job, scene);
  const choice = price === 1 ? candidate.choice : { ...candidate.choice, price: price * purchase };
  return { ...candidate, choice, sizing, outcome: heatScaled(candidate, sizing) };
}

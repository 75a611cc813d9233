import { at } from '../../core/at.ts';
import type { Scene } from '../../core/scene.ts';
import { sizeCandidate } from '../../sizing/sizeCandidate.ts';
import type { Job } from '../../study/job.ts';
import type { MoveOutcome } from '../../study/outcome.ts';
import type { JudgedCandidate } from '../judgement.ts';
import { rank } from '../ranking.ts';
import { shortfallsOf, simulatedShortfalls } from '../requirements.ts';
import { costsOf } from '../rows/costs.ts';
import type { Confidence, Counted } from './confidence.ts';
import { Count } from './count.ts';
import { type Draw, drawsOf } from './draws.ts';
import { heatScaled } from './heatScaled.ts';
import type { Ranges } from './ranges.ts';

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
  const isOut = candidates.map((candidate) =>
    simulatedShortfalls(job, candidate).some(({ row }) => !CARRIED.includes(row)),
  );
  const count = function* (
    total: number,
    of: (draw: Draw) => JudgedCandidate[],
  ): Generator<Counted, Counted> {
    const counts = new Count(choice);
    for (let n = 0; n < total; n++) {
      const draw = drawn(n);
      const turnedOut = of(draw);
      counts.add(turnedOut, rank(draw.job, turnedOut));
      if ((n + 1) % EVERY === 0 && n + 1 < total) yield counts.counted();
    }
    return counts.counted();
  };
  const calculate = (draw: Draw) =>
    candidates.map((candidate, place) =>
      at(isOut, place) ? candidate : calculated(job, candidate, draw, place),
    );
  const simulate = (draw: Draw) =>
    calculate(draw).map((candidate, place) => {
      // Whoever falls short by something else is out, however it settles.
      if (at(isOut, place) || shortfallsOf(draw.job, candidate).some(({ row }) => row !== 'settling'))
        return candidate;
      const moves = movesOf(at(draw.drives, place).simulated);
      return { ...candidate, outcome: { ...candidate.outcome, moves } };
    });
  const found = (counted: Counted, simulated: Counted | null): Confidence => ({
    ranges,
    calculated: counted,
    simulated,
    asked: { calculated: asked.calculated, simulated: asked.simulated },
  });
  let whole = asked.known ?? null;
  if (whole === null) {
    const byCalculation = count(asked.calculated, calculate);
    let step = byCalculation.next();
    for (; !step.done; step = byCalculation.next()) yield found(step.value, null);
    whole = step.value;
  }
  yield found(whole, null);
  if (asked.simulated === 0) return;
  const bySimulation = count(asked.simulated, simulate);
  let next = bySimulation.next();
  for (; !next.done; next = bySimulation.next()) yield found(whole, next.value);
  yield found(whole, next.value);
}

/** A candidate as it was drawn: its sizing anew, its heat scaled by that, its price; its moves as they were simulated. */
function calculated(
  job: Job,
  candidate: JudgedCandidate,
  { job: drawnJob, drives }: Draw,
  place: number,
): JudgedCandidate {
  const { calculated: scene, price } = at(drives, place);
  const sizing = sizeCandidate(drawnJob, scene);
  const choice =
    price === 1 ? candidate.choice : { ...candidate.choice, price: price * costsOf(candidate, job).purchase };
  return { ...candidate, choice, sizing, outcome: heatScaled(candidate, sizing) };
}

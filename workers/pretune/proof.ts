import { at, present } from '../../shared/core/at.ts';
import type { PretuneGoal, RobustnessRun } from '../../shared/protocol/pretune.ts';
import { byOutcome, byProof, type Proven } from './ranking.ts';
import type { Task } from './task.ts';
import type { Tried } from './tried.ts';
import { VARIATIONS } from './variations.ts';
import type { Work } from './work.ts';

/**
 * Tests finalists on every variation of the machine. One that has fallen behind the first is not tested further: it starts with the machine
 * that was hardest for that one.
 *
 * @returns those that were tested to the end, best first
 */
export async function proveAll(
  work: Work,
  task: Task,
  goal: PretuneGoal,
  finalists: readonly Tried[],
): Promise<(Tried & Proven)[]> {
  const vary = ({ point: { changes } }: Tried, index: number) =>
    work.run({ kind: 'variation', task, changes, index });
  const order = byProof(task, goal);
  const [first, ...others] = finalists;
  if (first === undefined) return [];
  const robustness = await Promise.all(VARIATIONS.map((_, index) => vary(first, index)));
  const favourite = { ...first, robustness };

  const compare = byOutcome(task);
  const hardestFirst = [...robustness.keys()].sort((a, b) => compare(at(robustness, b), at(robustness, a)));
  const challengers = others.map(async (other) => {
    const runs = new Map<number, RobustnessRun>();
    const soFar = () => ({ ...other, robustness: [...runs.values()] });
    for (const index of hardestFirst) {
      if (order(soFar(), favourite) >= 0) {
        work.leaveOut(VARIATIONS.length - runs.size);
        return null;
      }
      runs.set(index, await vary(other, index));
    }
    return { ...other, robustness: VARIATIONS.map((_, index) => present(runs.get(index))) };
  });
  const proven = [favourite, ...(await Promise.all(challengers))];
  return proven.filter((each) => each !== null).sort(order);
}

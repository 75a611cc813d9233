import { at } from '../../core/at.ts';
import { wilson } from '../../tolerance/wilson.ts';
import { BEHIND } from '../behind.ts';
import type { JudgedCandidate } from '../judgement.ts';
import type { Standing } from '../ranking.ts';
import { figure } from '../rows/rows.ts';
import { lowered } from '../text.ts';
import type { Counted } from './confidence.ts';

interface Tallied {
  readonly letters: readonly string[];
  readonly stays: boolean;
  count: number;
  readonly reasons: Map<string, number>;
}

/** Counts who comes first in the jobs that were drawn, and what put the choice behind. */
export class Count {
  readonly #choice: readonly number[];
  readonly #ways = new Map<string, Tallied>();
  #drawn = 0;

  /** @param choice places of those that come first for the job as stated */
  constructor(choice: readonly number[]) {
    this.#choice = choice;
  }

  add(candidates: readonly JudgedCandidate[], standing: Standing): void {
    const { first } = standing;
    const stays =
      this.#choice.length > 0 ? this.#choice.every((place) => first.includes(place)) : first.length === 0;
    const places = stays ? this.#choice : [...first].sort((a, b) => a - b);
    const key = places.join();
    const way = this.#ways.get(key) ?? {
      letters: places.map((place) => at(candidates, place).letter),
      stays,
      count: 0,
      reasons: new Map<string, number>(),
    };
    way.count++;
    this.#drawn++;
    const reason = stays ? null : this.#reason(candidates, standing);
    if (reason !== null) way.reasons.set(reason, (way.reasons.get(reason) ?? 0) + 1);
    this.#ways.set(key, way);
  }

  counted(): Counted {
    const drawn = this.#drawn;
    const ways = [...this.#ways.values()].sort((a, b) => b.count - a.count);
    const staying = ways.filter(({ stays }) => stays).reduce((sum, { count }) => sum + count, 0);
    return {
      drawn,
      stays: wilson(staying, drawn),
      ways: ways.map(({ letters, stays, count, reasons }) => ({
        letters,
        stays,
        count,
        share: wilson(count, drawn),
        reason: mostFrequent(reasons),
      })),
    };
  }

  /** Why the first of the choice is not first any more. */
  #reason(candidates: readonly JudgedCandidate[], { first, shortfalls, behindBy }: Standing): string | null {
    const lost = this.#choice.find((place) => !first.includes(place));
    if (lost === undefined) return null;
    const candidate = at(candidates, lost);
    const [shortfall] = at(shortfalls, lost);
    if (shortfall) return `${candidate.letter} ${fallenText(candidate, shortfall.row)}`;
    const by = at(behindBy, lost);
    return by === null ? null : `${candidate.letter} ${BEHIND[by]}`;
  }
}

/** Without the figures, which differ from job to job. */
function fallenText({ sizing }: JudgedCandidate, row: string): string {
  if (row === 'moves') return 'trips in its moves';
  if (row === 'settling') return 'does not settle within the dwell';
  if (row !== 'sizing') return `has too large a ${figure(row).name}`;
  const beyond = sizing.figures.find(({ standing }) => standing === 'beyond');
  return `goes beyond a limit by calculation${beyond ? ` (${lowered(beyond.label)})` : ''}`;
}

function mostFrequent(reasons: ReadonlyMap<string, number>): string | null {
  let most: readonly [string, number] | null = null;
  for (const each of reasons) if (most === null || each[1] > most[1]) most = each;
  return most?.[0] ?? null;
}

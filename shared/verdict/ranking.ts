import { at } from '../core/at.ts';
import { inUnit, shortest } from '../core/format.ts';
import type { Job } from '../study/job.ts';
import { yearsText } from '../study/jobLabels.ts';
import type { JudgedCandidate } from './judgement.ts';
import { type Shortfall, shortfallsOf } from './requirements.ts';
import { tie } from './rows/row.ts';
import { figure } from './rows/rows.ts';
import { listed, named } from './text.ts';

/** What tells candidates apart that do all that is asked; less is better in each. */
export type Criterion = 'total' | 'inPlace' | 'winding';

/** In the order in which they decide. */
export function criteriaOf({ values }: Job): readonly Criterion[] {
  return values.decidedBy === 'total cost'
    ? ['total', 'inPlace', 'winding']
    : ['inPlace', 'total', 'winding'];
}

const within = (id: Criterion) => {
  const { resolution, unit } = figure(id);
  return resolution.relative > 0
    ? inUnit(resolution.relative, '%', 1)
    : `${resolution.absolute} ${unit === '°C' ? 'K' : unit}`;
};

export function ruleOf({ values }: Job): string {
  const cost = `total cost over ${yearsText(values.years)}`;
  const saving = `those that cost less than ${shortest(values.savingThatCounts, '')} more, in your currency,`;
  const order =
    values.decidedBy === 'total cost'
      ? `The one with the lowest ${cost} comes first; ${saving} are ranked by the time until they are in position, to ${within('inPlace')}, then`
      : `The one that is in position soonest comes first, motion and settling together; those within ${within('inPlace')} of it are ranked by ${cost}, and ${saving}`;
  return (
    `Only drives that meet every requirement of the job are ranked. ${order} by winding temperature at the end of the day, ` +
    `to ${within('winding')}. Drives that still tie share a place.`
  );
}

export interface Standing {
  /** Places of the candidates that do all that is asked, the best first. */
  readonly ranking: readonly number[];
  /** Those that share first place. */
  readonly first: readonly number[];
  /** Which criterion told the first place from the last one left beside it; null where there is no second, or none did. */
  readonly decidedBy: Criterion | null;
  /** By which criterion a candidate that does the job, in the order of all, fell behind the first place; null for any other. */
  readonly behindBy: readonly (Criterion | null)[];
  readonly shortfalls: readonly (readonly Shortfall[])[];
}

export function rank(job: Job, candidates: readonly JudgedCandidate[]): Standing {
  const shortfalls = candidates.map((candidate) => shortfallsOf(job, candidate));
  let left = candidates.map((_, place) => place).filter((place) => at(shortfalls, place).length === 0);
  const ranking: number[] = [];
  let first: readonly number[] = [];
  let decidedBy: Standing['decidedBy'] = null;
  let behindBy: Standing['behindBy'] = candidates.map(() => null);
  while (left.length > 0) {
    const best = bestOf(job, candidates, left);
    if (ranking.length === 0) {
      first = best.places;
      decidedBy = best.decidedBy;
      behindBy = best.behindBy;
    }
    ranking.push(...best.places);
    left = left.filter((place) => !best.places.includes(place));
  }
  return { ranking, first, decidedBy, behindBy, shortfalls };
}

/** Whether a criterion does not tell two candidates apart: by its resolution, or since nobody would pay for the difference. */
export function isLevel(id: Criterion, a: JudgedCandidate, b: JudgedCandidate, job: Job): boolean {
  const row = figure(id);
  const [one, other] = [row.of(a, job), row.of(b, job)];
  if (one === null || other === null) return one === other;
  return id === 'total' ? Math.abs(one - other) <= job.values.savingThatCounts : tie(row, one, other);
}

function bestOf(job: Job, candidates: readonly JudgedCandidate[], from: readonly number[]) {
  let places = from;
  let decidedBy: Standing['decidedBy'] = null;
  const behindBy = candidates.map((): Criterion | null => null);
  for (const id of criteriaOf(job)) {
    const value = (place: number) => figure(id).of(at(candidates, place), job) ?? Number.POSITIVE_INFINITY;
    const best = places.reduce((least, place) => (value(place) < value(least) ? place : least));
    const kept = places.filter((place) => isLevel(id, at(candidates, place), at(candidates, best), job));
    for (const place of places) if (!kept.includes(place)) behindBy[place] = decidedBy = id;
    places = kept;
  }
  return { places, decidedBy, behindBy };
}

/** 'A (…) comes first', of several that they share it, or that none does the job. */
export function firstText(candidates: readonly JudgedCandidate[], { first }: Standing): string {
  if (first.length === 0) return 'no drive meets the requirements';
  const names = listed(first.map((place) => named(at(candidates, place))));
  return `${names} ${first.length > 1 ? 'share first place' : 'comes first'}`;
}

/**
 * Where no candidate does all that is asked: the one whose largest shortfall is smallest. What no number measures, as a trip, is larger than
 * anything; the number of shortfalls decides what is left.
 */
export function nearest(shortfalls: Standing['shortfalls']): readonly number[] {
  const worst = (place: number) => Math.max(...at(shortfalls, place).map(({ factor }) => factor));
  const places = shortfalls.map((_, place) => place);
  const byFactor = minOf(places, worst);
  return minOf(byFactor, (place) => at(shortfalls, place).length);
}

function minOf(places: readonly number[], of: (place: number) => number): readonly number[] {
  const min = Math.min(...places.map(of));
  return places.filter((place) => of(place) === min);
}

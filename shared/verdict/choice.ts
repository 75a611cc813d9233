import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';
import { CRITERIA, nearest, type Standing } from './ranking.ts';
import { tie } from './row.ts';
import { figure } from './rows.ts';
import { factorText, listed, named, numberWord, sentence } from './text.ts';

/** What is chosen and why, or why none. */
export function choiceSentence(job: Job, candidates: readonly JudgedCandidate[], standing: Standing): string {
  if (candidates.length === 0) return 'No drive has been simulated yet.';
  if (standing.ranking.length === 0) return none(candidates, standing);
  if (candidates.length === 1) return sentence(`${named(candidates[0]!)} does everything the job asks`);
  if (standing.ranking.length === 1) {
    const others =
      candidates.length === 2 ? 'the other does' : `the other ${numberWord(candidates.length - 1)} do`;
    return sentence(
      `Take ${named(candidates[standing.first[0]!]!)}: it does everything the job asks, and ${others} not`,
    );
  }
  if (standing.first.length > 1) return shared(job, candidates, standing);
  return chosen(job, candidates, standing);
}

function none(candidates: readonly JudgedCandidate[], { shortfalls }: Standing): string {
  const near = nearest(shortfalls).map((place) => candidates[place]!);
  const why = (candidate: JudgedCandidate) =>
    shortfalls[candidates.indexOf(candidate)]!.map(({ text }) => text).join('; ');
  if (candidates.length === 1)
    return sentence(`${named(candidates[0]!)} does not do all that the job asks: ${why(candidates[0]!)}`);
  const opening =
    candidates.length === 2
      ? 'Neither drive does all that the job asks.'
      : `None of the ${numberWord(candidates.length)} drives does all that the job asks.`;
  if (near.length > 1)
    return `${opening} ${sentence(`${listed(near.map(named))} come equally near: ${why(near[0]!)}`)}`;
  return `${opening} ${sentence(`${named(near[0]!)} fails by least: ${why(near[0]!)}`)}`;
}

function shared(job: Job, candidates: readonly JudgedCandidate[], { first, ranking }: Standing): string {
  const names = listed(first.map((place) => named(candidates[place]!)));
  const what =
    ranking.length === first.length
      ? 'do everything the job asks'
      : `lead the ${numberWord(ranking.length)} drives that do everything the job asks`;
  const figures = CRITERIA.map((id) => {
    const values = [
      ...new Set(first.map((place) => figure(id).text(figure(id).of(candidates[place]!, job)))),
    ];
    return `${figure(id).name} ${listed(values)}`;
  });
  return sentence(
    `${names} ${what}, and nothing that counts tells them apart (${figures.join('; ')}): take ${first.length > 2 ? 'any of them' : 'either'}`,
  );
}

function chosen(
  job: Job,
  candidates: readonly JudgedCandidate[],
  { first, ranking, decidedBy }: Standing,
): string {
  const winner = candidates[first[0]!]!;
  const text = (id: string, candidate: JudgedCandidate) => figure(id).text(figure(id).of(candidate, job));
  const value = (id: string, candidate: JudgedCandidate) => figure(id).of(candidate, job);
  const ties = (id: string) => (place: number) => {
    const [a, b] = [value(id, candidates[place]!), value(id, winner)];
    return a !== null && b !== null && tie(figure(id), a, b);
  };
  const others = ranking.slice(1);
  const opening = `Take ${named(winner)}: of the ${numberWord(ranking.length)} drives that do everything the job asks`;
  if (decidedBy === 'inPlace') {
    const next = candidates[soonest(others, (place) => value('inPlace', candidates[place]!))]!;
    return sentence(
      `${opening}, it is in place soonest, ${text('inPlace', winner)} after the start of a move, against ${text('inPlace', next)} of ${named(next)}`,
    );
  }
  const level = others.filter(ties('inPlace'));
  const soon = `in place as soon as any (${text('inPlace', winner)})`;
  if (decidedBy === 'energy') {
    const next = candidates[soonest(level, (place) => value('energy', candidates[place]!))]!;
    return sentence(
      `${opening}, it is ${soon} and of those takes least energy, ${text('energy', winner)} a cycle against ${text('energy', next)} of ${named(next)}${share(value('energy', winner), value('energy', next))}`,
    );
  }
  const even = level.filter(ties('energy'));
  const next = candidates[soonest(even, (place) => value('winding', candidates[place]!))]!;
  return sentence(
    `${opening}, it is ${soon}, takes as little energy as any of those (${text('energy', winner)} a cycle), and its winding is coolest at the day's end, ${text('winding', winner)} against ${text('winding', next)} of ${named(next)}`,
  );
}

function soonest(places: readonly number[], of: (place: number) => number | null): number {
  const size = (place: number) => of(place) ?? Number.POSITIVE_INFINITY;
  return places.reduce((best, place) => (size(place) < size(best) ? place : best));
}

function share(own: number | null, other: number | null): string {
  return own === null || other === null ? '' : `, ${factorText(own / other).degree} less`;
}

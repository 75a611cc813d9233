import { at } from '../core/at.ts';
import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';
import { CRITERIA, isLevel, nearest, type Standing } from './ranking.ts';
import { figure } from './rows.ts';
import { factorText, listed, named, numberWord, sentence } from './text.ts';

type Candidates = readonly JudgedCandidate[];
type Criterion = (typeof CRITERIA)[number];

/** What is chosen and why, or why none. */
export function choiceSentence(job: Job, candidates: Candidates, standing: Standing): string {
  const { ranking, first } = standing;
  const [only, ...others] = candidates;
  const [winner, ...sharers] = first.map((place) => at(candidates, place));
  if (!only) return 'No drive has been simulated yet.';
  if (!winner) return none(candidates, standing);
  if (others.length === 0) return sentence(`${named(only)} meets every requirement of the job`);
  if (ranking.length === 1) {
    const doNot = others.length === 1 ? 'the other does' : `the other ${numberWord(others.length)} do`;
    return sentence(`Take ${named(winner)}: it meets every requirement of the job, and ${doNot} not`);
  }
  if (sharers.length > 0) return shared(job, [winner, ...sharers], ranking.length);
  return chosen(job, winner, rivalsOf(candidates, standing), standing.decidedBy);
}

/** The others that do the job, in the order of the ranking. */
function rivalsOf(candidates: Candidates, { ranking }: Standing): Candidates {
  return ranking.slice(1).map((place) => at(candidates, place));
}

function none(candidates: Candidates, { shortfalls }: Standing): string {
  const places = nearest(shortfalls);
  const near = places.map((place) => named(at(candidates, place)));
  const why = at(shortfalls, at(places, 0))
    .map(({ text }) => text)
    .join('; ');
  if (candidates.length === 1)
    return sentence(`${listed(near)} does not meet every requirement of the job: ${why}`);
  const opening =
    candidates.length === 2
      ? 'Neither drive meets every requirement of the job.'
      : `None of the ${numberWord(candidates.length)} drives meets every requirement of the job.`;
  const who = near.length > 1 ? `${listed(near)} come equally close` : `${listed(near)} comes closest`;
  return `${opening} ${sentence(`${who}: ${why}`)}`;
}

function shared(job: Job, first: Candidates, ranked: number): string {
  const what =
    ranked === first.length
      ? 'meet every requirement of the job'
      : `lead the ${numberWord(ranked)} drives that meet every requirement of the job`;
  const figures = CRITERIA.map((id) => {
    const values = [...new Set(first.map((candidate) => textOf(id, candidate, job)))];
    return `${figure(id).name} ${listed(values)}`;
  });
  return sentence(
    `${listed(first.map(named))} ${what}, and no figure that counts separates them (${figures.join('; ')}): choose ${first.length > 2 ? 'any of them' : 'either'}`,
  );
}

function chosen(
  job: Job,
  winner: JudgedCandidate,
  rivals: Candidates,
  decidedBy: Standing['decidedBy'],
): string {
  const text = (id: Criterion, candidate = winner) => textOf(id, candidate, job);
  const ties = (id: Criterion) => (rival: JudgedCandidate) => isLevel(id, rival, winner, job);
  const opening = `Take ${named(winner)}: of the ${numberWord(1 + rivals.length)} drives that meet every requirement of the job`;
  if (decidedBy === 'inPlace') {
    const next = smallest('inPlace', rivals, job);
    return sentence(
      `${opening}, it is in position soonest, ${text('inPlace')} after the start of a move, against ${text('inPlace', next)} for ${named(next)}`,
    );
  }
  const level = rivals.filter(ties('inPlace'));
  const soon = `as quick as any (${text('inPlace')})`;
  if (decidedBy === 'energy') {
    const next = smallest('energy', level, job);
    return sentence(
      `${opening}, it is ${soon} and uses the least energy of those, ${text('energy')} per cycle against ${text('energy', next)} for ${named(next)}${share(figure('energy').of(winner, job), figure('energy').of(next, job))}`,
    );
  }
  const next = smallest('winding', level.filter(ties('energy')), job);
  return sentence(
    `${opening}, it is ${soon}, uses no more energy than any of those for a saving that counts (${text('energy')} per cycle), and has the coolest winding at the end of the day, ${text('winding')} against ${text('winding', next)} for ${named(next)}`,
  );
}

function textOf(id: Criterion, candidate: JudgedCandidate, job: Job): string {
  return figure(id).text(figure(id).of(candidate, job));
}

/** The candidate whose figure is smallest, the first of several. */
function smallest(id: Criterion, candidates: Candidates, job: Job): JudgedCandidate {
  const size = (candidate: JudgedCandidate) => figure(id).of(candidate, job) ?? Number.POSITIVE_INFINITY;
  return candidates.reduce((best, each) => (size(each) < size(best) ? each : best));
}

function share(own: number | null, other: number | null): string {
  return own === null || other === null ? '' : `, ${factorText(own / other).degree} less`;
}

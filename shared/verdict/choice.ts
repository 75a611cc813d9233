import { at } from '../core/at.ts';
import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';
import { type Criterion, criteriaOf, isLevel, nearest, type Standing } from './ranking.ts';
import { figure } from './rows/rows.ts';
import { listed, named, numberWord, sentence } from './text.ts';

type Candidates = readonly JudgedCandidate[];

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
  const figures = criteriaOf(job).map((id) => {
    const values = [...new Set(first.map((candidate) => textOf(id, candidate, job)))];
    return `${figure(id).name} ${listed(values)}`;
  });
  return sentence(
    `${listed(first.map(named))} ${what}, and no figure that counts separates them (${figures.join('; ')}): choose ${first.length > 2 ? 'any of them' : 'either'}`,
  );
}

/** What the winner has of a criterion that decides, and of one that does not. */
const TOLD: Readonly<
  Record<Criterion, { readonly best: string; readonly level: string; readonly after: string }>
> = {
  total: { best: 'it costs least', level: 'none costs less by an amount that counts', after: '' },
  inPlace: {
    best: 'it is in position soonest',
    level: 'none is in position sooner',
    after: ' after the start of a move',
  },
  winding: {
    best: 'it has the coolest winding at the end of the day',
    level: 'none stays cooler',
    after: '',
  },
};

function chosen(
  job: Job,
  winner: JudgedCandidate,
  rivals: Candidates,
  decidedBy: Standing['decidedBy'],
): string {
  const criteria = criteriaOf(job);
  const decisive = decidedBy ?? 'winding';
  const before = criteria.slice(0, criteria.indexOf(decisive));
  // Those that nothing before told from the winner.
  const left = before.reduce<Candidates>(
    (rest, id) => rest.filter((rival) => isLevel(id, rival, winner, job)),
    rivals,
  );
  const next = smallest(decisive, left, job);
  const levels = before.map((id) => `${TOLD[id].level} (${textOf(id, winner, job)})`);
  const { best, after } = TOLD[decisive];
  const against = `${best}, ${textOf(decisive, winner, job)}${after}, against ${textOf(decisive, next, job)} for ${named(next)}`;
  const why = decisive === 'total' ? figure('total').cause(winner, job, next) : null;
  return sentence(
    `Take ${named(winner)}: of the ${numberWord(1 + rivals.length)} drives that meet every requirement of the job, ${[...levels, against].join(', and ')}${why === null ? '' : ` (${why})`}`,
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

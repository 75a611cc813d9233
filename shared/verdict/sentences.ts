import { at } from '../core/at.ts';
import type { Job } from '../study/job.ts';
import { contrastClause, explainedClause } from './clauses.ts';
import { type Contrast, contrasts, SPOKEN_ROWS } from './contrasts.ts';
import type { JudgedCandidate } from './judgement.ts';
import type { Standing } from './ranking.ts';
import { tie } from './rows/row.ts';
import { listed, named, sentence } from './text.ts';

/** Candidates and families already mentioned get less. */
const TOLD_BEFORE = 0.5;
/** A contrast below this is not worth a sentence. */
const MIN_SCORE = 0.04;
/** Ties worth saying: rows that count at least this much, and so many of them. */
const TIE_WEIGHT = 0.8;
const MAX_TIES = 2;

/** What the choice has over others that do the job, what else stands out between the candidates, and what does not tell them apart. */
export function sentencesOn(job: Job, candidates: readonly JudgedCandidate[], standing: Standing): string[] {
  if (candidates.length < 2) return [];
  return [...contrastSentences(job, candidates, standing), ...tieSentences(job, candidates)];
}

/** One candidate beside another: what it is best at there, and what it pays with. */
interface Pairing {
  readonly candidate: JudgedCandidate;
  readonly rival: JudgedCandidate;
  readonly strength: Contrast;
  readonly weakness: Contrast | null;
  /** In anything, also where that has been told. */
  readonly isWorse: boolean;
  readonly score: number;
}

/** How often a candidate, a pair of candidates, a family or a fact was told of. */
type Told = Map<string, number>;

function contrastSentences(
  job: Job,
  candidates: readonly JudgedCandidate[],
  { first, ranking }: Standing,
): string[] {
  // Where several do the job, nobody needs to hear what those that do not are better or worse at.
  const compared = ranking.length > 1 ? ranking.map((place) => at(candidates, place)) : candidates;
  const pairs = compared.flatMap((candidate) =>
    compared
      .filter((rival) => rival !== candidate)
      .map((rival) => ({ candidate, rival, all: contrasts(job, candidate, rival) })),
  );
  const told: Told = new Map();
  const sentences: string[] = [];
  const tell = (from: typeof pairs): boolean => {
    const best = from
      .map(({ candidate, rival, all }) => pairing(candidate, rival, all, told))
      .filter((each) => each !== null)
      .reduce<Pairing | null>((max, each) => (max && max.score >= each.score ? max : each), null);
    if (best === null || best.score < MIN_SCORE) return false;
    sentences.push(pairingSentence(job, best));
    note(told, best);
    return true;
  };
  const others = ranking.filter((place) => !first.includes(place)).map((place) => at(candidates, place));
  const isChoice = (candidate: JudgedCandidate) =>
    first.length === 1 && candidate === candidates[at(first, 0)];
  tell(pairs.filter(({ candidate, rival }) => isChoice(candidate) && others.includes(rival)));
  while (sentences.length < compared.length && tell(pairs));
  return sentences;
}

function pairing(
  candidate: JudgedCandidate,
  rival: JudgedCandidate,
  all: readonly Contrast[],
  told: Told,
): Pairing | null {
  const worth = (contrast: Contrast) =>
    told.has(factKey(candidate, rival, contrast))
      ? 0
      : contrast.score * discount(told, familyKey(candidate, rival, contrast));
  const max = (of: readonly Contrast[]) =>
    of.reduce<Contrast | null>((best, each) => (best && worth(best) >= worth(each) ? best : each), null);
  const untold = all.filter((contrast) => worth(contrast) > 0);
  const strength = max(untold.filter(({ better }) => better));
  if (strength === null) return null;
  const weakness = max(untold.filter(({ better }) => !better));
  const sum = worth(strength) + (weakness ? worth(weakness) : 0);
  // The same two rows also make the mirrored sentence: the one that begins with the larger strength is told.
  const lead = 1e-3 * worth(strength);
  const score = (sum + lead) * discount(told, candidate.letter) * discount(told, pairKey(candidate, rival));
  return { candidate, rival, strength, weakness, isWorse: all.some(({ better }) => !better), score };
}

function note(told: Told, { candidate, rival, strength, weakness }: Pairing): void {
  const keys = [candidate.letter, pairKey(candidate, rival)];
  for (const contrast of weakness ? [strength, weakness] : [strength]) {
    keys.push(familyKey(candidate, rival, contrast), factKey(candidate, rival, contrast));
  }
  for (const key of keys) told.set(key, (told.get(key) ?? 0) + 1);
}

/** Whose good or bad figure it is. */
function familyKey(candidate: JudgedCandidate, rival: JudgedCandidate, { row, better }: Contrast): string {
  return `${row.speech.family} of ${better ? rival.letter : candidate.letter}`;
}

/** What is told once of two candidates is not told again the other way round. */
function factKey(candidate: JudgedCandidate, rival: JudgedCandidate, { row }: Contrast): string {
  return `${row.speech.family} of ${pairKey(candidate, rival)}`;
}

function pairKey(a: JudgedCandidate, b: JudgedCandidate): string {
  return [a.letter, b.letter].sort().join('/');
}

function discount(told: Told, key: string): number {
  return TOLD_BEFORE ** (told.get(key) ?? 0);
}

function pairingSentence(job: Job, { candidate, rival, strength, weakness, isWorse }: Pairing): string {
  const opening = `Against ${named(rival)}, ${named(candidate)} `;
  if (weakness === null && isWorse)
    return sentence(`${opening}also ${explainedClause(strength, job, candidate, rival)}`);
  if (weakness === null) {
    return sentence(
      `${opening}${explainedClause(strength, job, candidate, rival)}, and is worse in no figure that counts here`,
    );
  }
  return sentence(
    `${opening}${contrastClause(strength)}, but ${explainedClause(weakness, job, candidate, rival)}`,
  );
}

function tieSentences(job: Job, candidates: readonly JudgedCandidate[]): string[] {
  const rows = SPOKEN_ROWS.flatMap((row) => {
    const values = candidates.map((candidate) => row.of(candidate, job));
    const all = values.every((value) => value !== null && tie(row, value, values[0] ?? Number.NaN));
    return all ? { row, values } : [];
  });
  const letters = listed(candidates.map(({ letter }) => letter));
  if (rows.length === SPOKEN_ROWS.length) {
    return [`${letters} tie in every figure compared.`];
  }
  return rows
    .filter(({ row }) => row.speech.weight >= TIE_WEIGHT)
    .slice(0, MAX_TIES)
    .map(({ row, values }) =>
      sentence(
        `${letters} tie on ${row.name}: ${listed([...new Set(values.map((value) => row.text(value)))])}`,
      ),
    );
}

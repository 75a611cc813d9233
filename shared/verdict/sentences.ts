import type { Job } from '../study/job.ts';
import type { JudgedLane } from '../study/verdict.ts';
import { contrastClause, explainedClause } from './clauses.ts';
import { type Contrast, contrasts, SPOKEN_ROWS } from './contrasts.ts';
import type { Standing } from './ranking.ts';
import { figureText, tie } from './row.ts';
import { listed, named, sentence } from './words.ts';

/** Less is told of lanes and families that have been told of. */
const TOLD_BEFORE = 0.5;
/** A contrast that tells less than this is no sentence. */
const LEAST_SCORE = 0.04;
/** Ties worth saying: rows that count at least this much, and so many of them. */
const TIE_WEIGHT = 0.8;
const MOST_TIES = 2;

/** What the choice has over others that do the job, what else stands out between the lanes, and what does not tell them apart. */
export function sentencesOn(job: Job, lanes: readonly JudgedLane[], standing: Standing): string[] {
  if (lanes.length < 2) return [];
  return [...contrastSentences(job, lanes, standing), ...tieSentences(job, lanes)];
}

/** One lane beside another: what it is best at there, and what it pays with. */
interface Pairing {
  readonly lane: JudgedLane;
  readonly rival: JudgedLane;
  readonly strength: Contrast;
  readonly weakness: Contrast | null;
  /** In anything, also where that has been told. */
  readonly isWorse: boolean;
  readonly score: number;
}

/** How often a lane, a pair of lanes, a family or a fact was told of. */
type Told = Map<string, number>;

function contrastSentences(job: Job, lanes: readonly JudgedLane[], { first, ranking }: Standing): string[] {
  const pairs = lanes.flatMap((lane) =>
    lanes
      .filter((rival) => rival !== lane)
      .map((rival) => ({ lane, rival, all: contrasts(job, lane, rival) })),
  );
  const told: Told = new Map();
  const sentences: string[] = [];
  const tell = (from: typeof pairs): boolean => {
    const best = from
      .map(({ lane, rival, all }) => pairing(lane, rival, all, told))
      .filter((each) => each !== null)
      .reduce<Pairing | null>((most, each) => (most && most.score >= each.score ? most : each), null);
    if (best === null || best.score < LEAST_SCORE) return false;
    sentences.push(pairingSentence(job, best));
    note(told, best);
    return true;
  };
  const others = ranking.filter((place) => !first.includes(place)).map((place) => lanes[place]!);
  const isChoice = (lane: JudgedLane) => first.length === 1 && lane === lanes[first[0]!];
  tell(pairs.filter(({ lane, rival }) => isChoice(lane) && others.includes(rival)));
  while (sentences.length < lanes.length && tell(pairs));
  return sentences;
}

function pairing(lane: JudgedLane, rival: JudgedLane, all: readonly Contrast[], told: Told): Pairing | null {
  const worth = (contrast: Contrast) =>
    told.has(factKey(lane, rival, contrast))
      ? 0
      : contrast.score * discount(told, familyKey(lane, rival, contrast));
  const most = (of: readonly Contrast[]) =>
    of.reduce<Contrast | null>((best, each) => (best && worth(best) >= worth(each) ? best : each), null);
  const untold = all.filter((contrast) => worth(contrast) > 0);
  const strength = most(untold.filter(({ better }) => better));
  if (strength === null) return null;
  const weakness = most(untold.filter(({ better }) => !better));
  const sum = worth(strength) + (weakness ? worth(weakness) : 0);
  // The same two rows also make the mirrored sentence: the one that begins with the larger strength is told.
  const lead = 1e-3 * worth(strength);
  const score = (sum + lead) * discount(told, lane.letter) * discount(told, pairKey(lane, rival));
  return { lane, rival, strength, weakness, isWorse: all.some(({ better }) => !better), score };
}

function note(told: Told, { lane, rival, strength, weakness }: Pairing): void {
  const keys = [lane.letter, pairKey(lane, rival)];
  for (const contrast of weakness ? [strength, weakness] : [strength]) {
    keys.push(familyKey(lane, rival, contrast), factKey(lane, rival, contrast));
  }
  for (const key of keys) told.set(key, (told.get(key) ?? 0) + 1);
}

/** Whose good or bad figure it is. */
function familyKey(lane: JudgedLane, rival: JudgedLane, { row, better }: Contrast): string {
  return `${row.speech.family} of ${better ? rival.letter : lane.letter}`;
}

/** What is told once of two lanes is not told again the other way round. */
function factKey(lane: JudgedLane, rival: JudgedLane, { row }: Contrast): string {
  return `${row.speech.family} of ${pairKey(lane, rival)}`;
}

function pairKey(a: JudgedLane, b: JudgedLane): string {
  return [a.letter, b.letter].sort().join('/');
}

function discount(told: Told, key: string): number {
  return TOLD_BEFORE ** (told.get(key) ?? 0);
}

function pairingSentence(job: Job, { lane, rival, strength, weakness, isWorse }: Pairing): string {
  const opening = `Against ${named(rival)}, ${named(lane)} `;
  if (weakness === null && isWorse)
    return sentence(`${opening}also ${explainedClause(strength, job, lane, rival)}`);
  if (weakness === null) {
    return sentence(
      `${opening}${explainedClause(strength, job, lane, rival)}, and is worse in nothing that counts here`,
    );
  }
  return sentence(
    `${opening}${contrastClause(strength)}, but ${explainedClause(weakness, job, lane, rival)}`,
  );
}

function tieSentences(job: Job, lanes: readonly JudgedLane[]): string[] {
  const rows = SPOKEN_ROWS.flatMap((row) => {
    const values = lanes.map((lane) => row.of(lane, job));
    const all = values.every((value) => value !== null && tie(row, value, values[0] ?? Number.NaN));
    return all ? { row, values } : [];
  });
  const letters = listed(lanes.map(({ letter }) => letter));
  if (rows.length === SPOKEN_ROWS.length) {
    return [`Nothing tells ${letters} apart: they tie in every figure that is compared.`];
  }
  return rows
    .filter(({ row }) => row.speech.weight >= TIE_WEIGHT)
    .slice(0, MOST_TIES)
    .map(({ row, values }) =>
      sentence(
        `${letters} tie on ${row.label.toLowerCase()}: ${listed(values.map((value) => figureText(row, value)))}`,
      ),
    );
}

import { at } from '../core/at.ts';
import { asRate, ranged } from '../core/format.ts';
import type { NumberRow } from '../core/parameters/row.ts';
import type { Presets } from '../core/scene.ts';
import { durationText } from '../figures/timeLapseText.ts';
import { sizeCandidate } from '../sizing/sizeCandidate.ts';
import { candidateScene } from '../study/candidateScene.ts';
import { checkJob } from '../study/checkJob.ts';
import { type Job, type JobValues, jobRow } from '../study/job.ts';
import { jobLabel } from '../study/jobLabels.ts';
import { BEHIND } from './behind.ts';
import { FLIP_INPUTS, type FlipInput } from './flipInputs.ts';
import type { Flip, Flips, JudgedCandidate } from './judgement.ts';
import { purchaseSentences } from './purchases.ts';
import { firstText, rank, type Standing } from './ranking.ts';
import { type Shortfall, simulatedShortfalls } from './requirements.ts';
import { robustnessSentence } from './robustness.ts';
import { type Change, firstChange } from './search.ts';
import { clause, listed, sentence } from './text.ts';

const MAX_FLIPS = 6;
/** A change is looked for up to this factor away, or this share of a range that runs through zero: farther off nothing is near. */
const NEAR_FACTOR = 2;
const NEAR_SHARE = 0.2;

/** A ranking with another input, and who comes first in it. */
interface Outlook {
  readonly key: string;
  readonly standing: Standing;
}

/** A flip with how far it is: as a share of the value on a log scale, or of the range. */
interface Found extends Flip {
  readonly distance: number;
}

/**
 * Every single input of the job that, moved by itself, would change the first place; the nearest first. It takes hundreds of sizings;
 * `onProgress` hears the share that is done.
 */
export function findFlips(
  job: Job,
  candidates: readonly JudgedCandidate[],
  presets: Presets,
  onProgress: (share: number) => void = () => {},
): Flips {
  if (candidates.length === 0) return { flips: [], flipNote: '', purchases: [], robustness: '' };
  const standing = rank(job, candidates);
  const inputs = FLIP_INPUTS.filter(({ appliesTo }) => appliesTo(job));
  const found: Found[] = [];
  for (const [k, input] of inputs.entries()) {
    onProgress(k / inputs.length);
    found.push(...flipsOfInput(job, candidates, standing, input, presets));
  }
  found.sort((a, b) => a.distance - b.distance);
  const flips = found.slice(0, MAX_FLIPS).map(({ distance: _, ...flip }) => flip);
  return {
    flips,
    flipNote: noteOn(inputs, found.length, standing),
    purchases: purchaseSentences(job, candidates, presets),
    robustness: robustnessSentence(job, candidates, presets),
  };
}

function noteOn(inputs: readonly FlipInput[], found: number, { first }: Standing): string {
  const label = ({ input }: FlipInput) => jobLabel(input).toLowerCase().replace(/, ±$/, '');
  const varied = `Inputs varied one at a time, up to about a factor of two: ${listed(inputs.map(label))}.`;
  const held =
    'Simulated figures are held constant; they are not scaled to another job. A narrower window or a longer day was not simulated and is not judged.';
  const opening =
    found === 0
      ? `Nothing near: no tested change ${first.length > 0 ? 'of a single input alters the choice' : 'makes a drive meet the requirements'}. `
      : found > MAX_FLIPS
        ? `The nearest ${MAX_FLIPS} of ${found} changes. `
        : '';
  return `${opening}${varied} ${held}`;
}

function flipsOfInput(
  job: Job,
  candidates: readonly JudgedCandidate[],
  standing: Standing,
  input: FlipInput,
  presets: Presets,
): Found[] {
  const row = jobRow(input.input) as NumberRow;
  const from = job.values[input.input] as number;
  const key = keyOf(standing);
  const of = (value: number) => outlook(job, candidates, input, value, presets);
  // What the sizing says of the job as it is must be what the choice was made with.
  if (of(from)?.key !== key) return [];
  return [row.max, row.min].flatMap((end) => {
    const legal = legalEnd(job, input, from, nearEnd(row, from, end));
    const change = legal === from ? null : firstChange(row, from, legal, key, of);
    if (change === null) return [];
    const distance =
      from > 0 && row.min >= 0
        ? Math.abs(Math.log(change.at / from))
        : Math.abs(change.at - from) / (row.max - row.min);
    const label = flipText(candidates, standing, input, from, change);
    return { input: input.input, from, to: change.at, sentence: label, distance };
  });
}

/** The farthest value on the way to an end of the range that still counts as near. */
function nearEnd({ min, max }: NumberRow, from: number, end: number): number {
  const byRatio = from > 0 && min >= 0;
  if (end > from) return Math.min(end, byRatio ? from * NEAR_FACTOR : from + NEAR_SHARE * (max - min));
  return Math.max(end, byRatio ? from / NEAR_FACTOR : from - NEAR_SHARE * (max - min));
}

/** The farthest value on the way to `end` that makes a job at all: a stroke ends with the travel. */
function legalEnd(job: Job, { input }: FlipInput, from: number, end: number): number {
  const isLegal = (value: number) => checkJob(withValue(job, input, value)).job !== null;
  if (isLegal(end)) return end;
  let [legal, illegal] = [from, end];
  for (let k = 0; k < 40; k++) {
    const middle = legal > 0 && illegal > 0 ? Math.sqrt(legal * illegal) : (legal + illegal) / 2;
    if (isLegal(middle)) legal = middle;
    else illegal = middle;
  }
  return legal;
}

/** Who comes first with another value; null where that is not known. */
function outlook(
  job: Job,
  candidates: readonly JudgedCandidate[],
  input: FlipInput,
  value: number,
  presets: Presets,
): Outlook | null {
  const other = withValue(job, input.input, value);
  const cases: [JudgedCandidate[], JudgedCandidate[]] = [[], []];
  for (const candidate of candidates) {
    const outcomes = input.outcomes(candidate, value, job);
    if (outcomes === null) return null;
    const simulated = outcomes.map((outcome) => ({ ...candidate, outcome }));
    // Whoever fails in the simulation is out, whatever the sizing says; to size a candidate takes longest.
    const isOut = simulated.every((each) => simulatedShortfalls(other, each).length > 0);
    const sizing = input.sizingFollows && !isOut ? resized(other, candidate, presets) : candidate.sizing;
    for (const k of [0, 1] as const) cases[k].push({ ...at(simulated, k), sizing });
  }
  const [one, two] = cases.map((each) => rank(other, each)) as [Standing, Standing];
  return keyOf(one) === keyOf(two) ? { key: keyOf(one), standing: one } : null;
}

/** Untuned, since gains are no part of a sizing. */
function resized(job: Job, { choice }: JudgedCandidate, presets: Presets): JudgedCandidate['sizing'] {
  return sizeCandidate(job, candidateScene(job, { ...choice, gains: null }, presets));
}

function withValue(job: Job, input: keyof JobValues, value: number): Job {
  return { ...job, values: { ...job.values, [input]: value } };
}

function keyOf({ first }: Standing): string {
  return [...first].sort((a, b) => a - b).join();
}

function flipText(
  candidates: readonly JudgedCandidate[],
  before: Standing,
  { input, by }: FlipInput,
  from: number,
  { at: to, becomes, exact }: Change<Outlook>,
): string {
  const row = jobRow(input) as NumberRow;
  const text = (value: number) => (row.unit === 'h' ? durationText(value) : asRate(ranged(value, row.unit)));
  const label = jobLabel(input).replace(/, ±$/, '');
  const where = `${label} ${to > from ? 'above' : 'below'} ${text(to)}${exact ? '' : ' at the latest'} (now ${text(from)})`;
  const how =
    by === 'calculation'
      ? 'By calculation, with the simulated figures held'
      : 'With the simulated figures held';
  return `${sentence(`${where}: ${consequence(candidates, before, becomes.standing)}`)} ${how}.`;
}

function why(shortfalls: readonly Shortfall[]): string {
  const { brief, text } = at(shortfalls, 0);
  return clause(brief ?? text);
}

/** Who comes first then, and why: who no longer does the job, or who does it now. */
function consequence(candidates: readonly JudgedCandidate[], before: Standing, after: Standing): string {
  const who = firstText(candidates, after);
  const fallen = before.first.filter((place) => at(after.shortfalls, place).length > 0);
  const risen = after.first.filter((place) => at(before.shortfalls, place).length > 0);
  if (fallen.length > 0) {
    const short = fallen.map(
      (place) => `${at(candidates, place).letter} (${why(at(after.shortfalls, place))})`,
    );
    return `${who}, since ${listed(short)} then ${short.length > 1 ? 'fall' : 'falls'} short`;
  }
  if (risen.length > 0) {
    const letters = listed(risen.map((place) => at(candidates, place).letter));
    const subject = risen.join() === after.first.join() ? (risen.length > 1 ? 'they' : 'it') : letters;
    return `${who}, since ${subject} then ${risen.length > 1 ? 'meet' : 'meets'} every requirement`;
  }
  const behind = before.first.flatMap((place) => {
    const id = at(after.behindBy, place);
    return id === null ? [] : [`${at(candidates, place).letter} ${BEHIND[id]}`];
  });
  return behind.length === 0 ? who : `${who}, since ${listed(behind)}`;
}

import { ranged } from '../format.ts';
import type { NumberRow } from '../parameters/row.ts';
import type { Kit } from '../scene.ts';
import { sizeLane } from '../sizing/sizeLane.ts';
import { checkJob } from '../study/checkJob.ts';
import { type Job, type JobValues, jobRow } from '../study/job.ts';
import { jobLabel } from '../study/jobWords.ts';
import { laneScene } from '../study/laneScene.ts';
import type { Flip, Flips, JudgedLane } from '../study/verdict.ts';
import { durationText } from '../timeLapseText.ts';
import { FLIP_INPUTS, type FlipInput } from './flipInputs.ts';
import { rank, type Standing } from './ranking.ts';
import { type Shortfall, simulatedShortfalls } from './requirements.ts';
import { type Change, firstChange } from './search.ts';
import { clause, listed, named, sentence } from './words.ts';

const MOST_FLIPS = 6;

type Kits = Readonly<Record<string, Kit>>;

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
 * Every single input of the job that, moved by itself, would change the first place; the nearest first. It takes hundreds of sizings, and
 * pauses after each input, so that a page can do something else in between.
 */
export function* searchFlips(
  job: Job,
  lanes: readonly JudgedLane[],
  kits: Kits,
): Generator<undefined, Flips, void> {
  if (lanes.length === 0) return { flips: [], flipNote: '' };
  const standing = rank(job, lanes);
  const inputs = FLIP_INPUTS.filter(({ appliesTo }) => appliesTo(job));
  const found: Found[] = [];
  for (const input of inputs) {
    found.push(...flipsOfInput(job, lanes, standing, input, kits));
    yield;
  }
  found.sort((a, b) => a.distance - b.distance);
  const flips = found.slice(0, MOST_FLIPS).map(({ distance: _, ...flip }) => flip);
  return { flips, flipNote: noteOn(inputs, found.length, standing) };
}

function noteOn(inputs: readonly FlipInput[], found: number, { first }: Standing): string {
  const label = ({ input }: FlipInput) => jobLabel(input).toLowerCase().replace(/, ±$/, '');
  const varied = `Varied one at a time within what can be entered: ${listed(inputs.map(label))}.`;
  const held =
    'What was simulated is held: it is not scaled to another job. A narrower window and a longer day were not simulated and are not judged.';
  const opening =
    found === 0
      ? `Nothing that was varied ${first.length > 0 ? 'changes the first place' : 'by itself makes a drive do the job'}. `
      : found > MOST_FLIPS
        ? `The nearest ${MOST_FLIPS} of ${found} changes. `
        : '';
  return `${opening}${varied} ${held}`;
}

function flipsOfInput(
  job: Job,
  lanes: readonly JudgedLane[],
  standing: Standing,
  input: FlipInput,
  kits: Kits,
): Found[] {
  const row = jobRow(input.input) as NumberRow;
  const from = job.values[input.input] as number;
  const key = keyOf(standing);
  const of = (value: number) => outlook(job, lanes, input, value, kits);
  // What the sizing says of the job as it is must be what the choice was made with.
  if (of(from)?.key !== key) return [];
  return [row.max, row.min].flatMap((end) => {
    const legal = legalEnd(job, input, from, end);
    const change = legal === from ? null : firstChange(row, from, legal, key, of);
    if (change === null) return [];
    const distance =
      from > 0 && row.min >= 0
        ? Math.abs(Math.log(change.at / from))
        : Math.abs(change.at - from) / (row.max - row.min);
    const words = flipWords(lanes, standing, input, from, change);
    return { input: input.input, from, to: change.at, sentence: words, distance };
  });
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
  lanes: readonly JudgedLane[],
  input: FlipInput,
  value: number,
  kits: Kits,
): Outlook | null {
  const other = withValue(job, input.input, value);
  const cases: [JudgedLane[], JudgedLane[]] = [[], []];
  for (const lane of lanes) {
    const outcomes = input.outcomes(lane, value, job);
    if (outcomes === null) return null;
    const simulated = outcomes.map((outcome) => ({ ...lane, outcome }));
    // Whoever fails in the simulation is out, whatever the sizing says; to size a lane takes longest.
    const isOut = simulated.every((each) => simulatedShortfalls(other, each).length > 0);
    const sizing = input.sizingFollows && !isOut ? resized(other, lane, kits) : lane.sizing;
    for (const k of [0, 1] as const) cases[k].push({ ...simulated[k]!, sizing });
  }
  const [one, two] = cases.map((each) => rank(other, each)) as [Standing, Standing];
  return keyOf(one) === keyOf(two) ? { key: keyOf(one), standing: one } : null;
}

/** Untuned, since gains are no part of a sizing. */
function resized(job: Job, { choice }: JudgedLane, kits: Kits): JudgedLane['sizing'] {
  return sizeLane(job, laneScene(job, { ...choice, gains: null }, kits));
}

function withValue(job: Job, input: keyof JobValues, value: number): Job {
  return { ...job, values: { ...job.values, [input]: value } };
}

function keyOf({ first }: Standing): string {
  return [...first].sort((a, b) => a - b).join();
}

function flipWords(
  lanes: readonly JudgedLane[],
  before: Standing,
  { input, by }: FlipInput,
  from: number,
  { at: to, becomes, exact }: Change<Outlook>,
): string {
  const row = jobRow(input) as NumberRow;
  const text = (value: number) => (row.unit === 'h' ? durationText(value) : ranged(value, row.unit));
  const label = jobLabel(input).replace(/, ±$/, '');
  const where = `${label} ${to > from ? 'above' : 'below'} ${text(to)}${exact ? '' : ' at the latest'} (now ${text(from)})`;
  const how =
    by === 'calculation'
      ? 'By calculation, with the simulated figures held'
      : 'With the simulated figures held';
  return `${sentence(`${where}: ${consequence(lanes, before, becomes.standing)}`)} ${how}.`;
}

function why([first]: readonly Shortfall[]): string {
  return clause(first!.brief ?? first!.text);
}

/** Who comes first then, and why: who no longer does the job, or who does it now. */
function consequence(lanes: readonly JudgedLane[], before: Standing, after: Standing): string {
  const names = listed(after.first.map((place) => named(lanes[place]!)));
  const who =
    after.first.length === 0
      ? 'no drive does the job any more'
      : after.first.length === 1
        ? `${names} comes first`
        : `${names} share the first place`;
  const fallen = before.first.filter((place) => after.shortfalls[place]!.length > 0);
  const risen = after.first.filter((place) => before.shortfalls[place]!.length > 0);
  if (fallen.length > 0) {
    const reasons = fallen.map((place) => `${lanes[place]!.letter}: ${why(after.shortfalls[place]!)}`);
    return `${who}, since ${listed(reasons)}`;
  }
  if (risen.length > 0) {
    const letters = listed(risen.map((place) => lanes[place]!.letter));
    return `${who}, since ${letters} then ${risen.length > 1 ? 'do' : 'does'} all that is asked`;
  }
  return after.decidedBy === null ? who : `${who}: ${DECIDED[after.decidedBy]}`;
}

const DECIDED: Readonly<Record<NonNullable<Standing['decidedBy']>, string>> = {
  inPlace: 'it is then in place soonest',
  energy: 'in place as soon as any, it takes least energy',
  winding: 'with time and energy alike, its winding is coolest',
};

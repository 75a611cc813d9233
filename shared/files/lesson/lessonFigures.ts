import { CHANNEL_NAMES } from '../../core/channels.ts';
import { linear, log } from '../../core/parameters/row.ts';
import { didYouMean } from '../../core/problem.ts';
import { LOOP_FIGURE_NAMES } from '../../figures/loopFigures.ts';
import { MOVE_FIGURE_NAMES } from '../../figures/moveFigures.ts';
import {
  type Answer,
  type Claim,
  MAX_MEASURES,
  type Measure,
  type MeasureSource,
  MOVES_TAKEN,
  RELATIONS,
  type StepRun,
  VALUES_TAKEN,
} from '../../lesson/lesson.ts';
import { measureUnit } from '../../lesson/measureText.ts';
import { EntryReader, LONGEST_PARAGRAPH } from './entryReader.ts';

const LONGEST_NAME = 40;
const TIMES = log('', '', [1e-6, 1e6], 1, 'Factor of a claim');
const MEASURE_ENTRIES = ['id', 'of', 'move', 'channel', 'loop', 'trip', 'take', 'from', 'to'];

/** The measures of a step. `earlier` are those of the steps before it: no name may stand for two. */
export function readMeasures(step: EntryReader, run: StepRun | null, earlier: readonly Measure[]): Measure[] {
  const taken = new Set(earlier.map(({ id }) => id));
  return step.list('measures', [0, MAX_MEASURES]).map(({ value, place }) => {
    const measure = new EntryReader(value, place, MEASURE_ENTRIES, step.problems);
    const id = measure.text('id', LONGEST_NAME);
    if (id !== '' && taken.has(id))
      measure.wrong('id', `"${id}" is the name of another measure. Give a name of its own.`);
    taken.add(id);
    const of = measure.text('of', LONGEST_NAME, { mayBeEmpty: true });
    return { id, of, source: readSource(measure, run) };
  });
}

function readSource(measure: EntryReader, run: StepRun | null): MeasureSource {
  if (measure.has('loop')) return { kind: 'loop', figure: measure.option('loop', LOOP_FIGURE_NAMES) };
  if (!run) measure.wrong('id', 'the step has no run to measure. Give it one, or a measure of the loop.');
  if (measure.has('move')) {
    const figure = measure.option('move', MOVE_FIGURE_NAMES);
    return { kind: 'move', figure, take: measure.option('take', MOVES_TAKEN, 'last') };
  }
  if (measure.has('channel')) {
    const end = run?.seconds ?? 0;
    const channel = measure.option('channel', CHANNEL_NAMES);
    const take = measure.option('take', VALUES_TAKEN);
    const from = measure.number('from', linear('', 's', [0, end], 0, 'Start'), 0);
    const to = measure.number('to', linear('', 's', [from, end], end, 'End'), end);
    return { kind: 'channel', channel, take, from, to };
  }
  if (measure.get('trip') !== true)
    measure.wrong('id', 'it does not say what it measures. Give "move", "channel", "loop" or "trip": true.');
  return { kind: 'trip' };
}

/** The answer of a step. Its claims may quote any of `measures`, those of earlier steps too. */
export function readAnswer(step: EntryReader, measures: readonly Measure[]): Answer {
  const entries = ['text', 'claims', 'notShown'];
  const answer = new EntryReader(step.get('answer'), step.placeOf('answer'), entries, step.problems);
  return {
    text: answer.text('text', LONGEST_PARAGRAPH),
    claims: answer
      .list('claims', [0, MAX_MEASURES])
      .map(({ value, place }) =>
        readClaim(new EntryReader(value, place, CLAIM_ENTRIES, step.problems), measures),
      ),
    notShown: answer.text('notShown', LONGEST_PARAGRAPH, { mayBeEmpty: true }),
  };
}

const CLAIM_ENTRIES = ['measure', 'is', 'times', 'than'];

function readClaim(claim: EntryReader, measures: readonly Measure[]): Claim {
  const measure = readMeasureName(claim, 'measure', measures);
  const is = claim.option('is', RELATIONS);
  const times = claim.number('times', TIMES, 1);
  if (is === 'none' || is === 'some') return { measure, is, times, than: null };
  const than = claim.get('than');
  if (typeof than === 'number' && Number.isFinite(than)) return { measure, is, times, than };
  const other = readMeasureName(claim, 'than', measures);
  const unitOf = (id: string) => measures.filter((each) => each.id === id).map(measureUnit)[0];
  if (unitOf(measure) !== unitOf(other))
    claim.wrong(
      'than',
      `"${other}" and "${measure}" are in different units. Compare two figures of one kind.`,
    );
  return { measure, is, times, than: other };
}

function readMeasureName(claim: EntryReader, name: string, measures: readonly Measure[]): string {
  const ids = measures.map(({ id }) => id);
  const id = claim.text(name, LONGEST_NAME);
  if (id === '' || ids.includes(id)) return id;
  const meant = didYouMean(id, ids);
  claim.wrong(
    name,
    `"${id}" is no measure of this step or an earlier one.${meant} Measures so far: ${ids.join(', ') || 'none'}.`,
  );
  return id;
}

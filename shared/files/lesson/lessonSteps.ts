import { checkParameters } from '../../core/check.ts';
import { linear, log } from '../../core/parameters/row.ts';
import { PARAMETER_NAMES, type Parameters } from '../../core/parameters/table.ts';
import { didYouMean, isNot, type Problem, within } from '../../core/problem.ts';
import type { Scene, Shelf } from '../../core/scene.ts';
import {
  AREAS,
  CHART_PLACES,
  CUTAWAYS,
  GAUGE_PLACES,
  type HandPoint,
  type LessonStep,
  LONGEST_RUN,
  MAX_EVENTS,
  type Measure,
  PACES,
  type Pointer,
  type Question,
  STAGE_PLACES,
  type StepRun,
  type StepView,
  type TimedChange,
} from '../../lesson/lesson.ts';
import { readScene } from '../sceneFile.ts';
import { checkChange, HAND_ROW } from '../sessionFile.ts';
import { EntryReader, LONGEST_LINE, LONGEST_PARAGRAPH } from './entryReader.ts';
import { readAnswer, readMeasures } from './lessonFigures.ts';

/** What the steps of a lesson are read with; `measures` are those of the steps so far. */
interface Reading {
  readonly shelf: Shelf;
  readonly measures: Measure[];
  readonly problems: Problem[];
}

const STEP_ENTRIES = [
  'title',
  'text',
  'notes',
  'scene',
  'parameters',
  'view',
  'pointAt',
  'question',
  'run',
  'measures',
  'answer',
];

const TURN = linear('', '°', [-Math.PI, Math.PI], 0, 'Turn of the camera');
const RISE = linear('', '°', [-Math.PI / 2, Math.PI / 2], 0, 'Rise of the camera');
const CLOSER = log('', '', [0.2, 8], 1, 'How much nearer the camera is');
const WINDOW = log('', 's', [1e-3, 600], 2, 'Time across the charts');
const SECONDS = log('', 's', [1e-3, LONGEST_RUN], 2, 'Simulated time of the run');
const PACE = log('', '', [...PACES], 1, 'Simulated seconds per second');

/** One step, or undefined where it has no legal scene. */
export function readStep(
  input: unknown,
  place: string,
  { shelf, measures, problems }: Reading,
): LessonStep | undefined {
  const step = new EntryReader(input, place, STEP_ENTRIES, problems);
  if (!step.isObject) return undefined;
  const title = step.text('title', LONGEST_LINE);
  const text = step.text('text', LONGEST_PARAGRAPH);
  const notes = step.text('notes', LONGEST_PARAGRAPH, { mayBeEmpty: true });
  const scene = readStepScene(step, shelf);
  const view = readView(step);
  const pointAt = step
    .list('pointAt', [0, 6])
    .map((each) => readPointer(new EntryReader(each.value, each.place, POINTERS, problems)));
  const question = step.has('question') ? readQuestion(step) : null;
  const run = step.has('run') ? readRun(step, scene?.parameters) : null;
  const ofStep = readMeasures(step, run, measures);
  measures.push(...ofStep);
  const answer = readAnswer(step, measures);
  return scene && { title, text, notes, scene, view, pointAt, question, run, measures: ofStep, answer };
}

/** A scene of the shelf by its id, or a whole one, with the changes of the step. */
function readStepScene(step: EntryReader, shelf: Shelf): Scene | undefined {
  const scene = namedScene(step, shelf);
  if (!scene || !step.has('parameters')) return scene;
  const { changes, problems } = checkParameters(step.get('parameters'), scene.parameters);
  for (const each of problems) step.add(within('parameters', each));
  return { ...scene, parameters: { ...scene.parameters, ...changes } };
}

function namedScene(step: EntryReader, shelf: Shelf): Scene | undefined {
  const input = step.get('scene');
  if (typeof input === 'object' && input !== null) {
    const read = readScene(input, shelf);
    if ('scene' in read) return read.scene;
    for (const each of read.problems) step.add(within('scene', each));
    return undefined;
  }
  const found = shelf.scenes.find(({ id }) => id !== null && id === input);
  if (found) return found;
  const ids = shelf.scenes.flatMap(({ id }) => id ?? []);
  const meant = typeof input === 'string' ? didYouMean(input, ids) : '';
  step.wrong('scene', `${isNot(input, 'a scene of the shelf')}${meant} Give one of ${ids.join(', ')}.`);
  return undefined;
}

function readView(step: EntryReader): StepView {
  const entries = ['cutaway', 'area', 'window', 'camera'];
  const view = new EntryReader(step.get('view') ?? {}, step.placeOf('view'), entries, step.problems);
  const camera = new EntryReader(
    view.get('camera') ?? {},
    view.placeOf('camera'),
    ['turn', 'rise', 'closer'],
    step.problems,
  );
  return {
    cutaway: view.option('cutaway', CUTAWAYS, 'closed'),
    area: view.option('area', AREAS, 'motion'),
    window: view.has('window') ? view.number('window', WINDOW) : null,
    camera: {
      turn: camera.number('turn', TURN, 0),
      rise: camera.number('rise', RISE, 0),
      closer: camera.number('closer', CLOSER, 1),
    },
  };
}

const POINTERS = ['stage', 'gauge', 'chart', 'field'];

function readPointer(pointer: EntryReader): Pointer {
  if (pointer.has('gauge')) return { gauge: pointer.option('gauge', GAUGE_PLACES) };
  if (pointer.has('chart')) return { chart: pointer.option('chart', CHART_PLACES) };
  if (pointer.has('field')) return { field: pointer.option('field', PARAMETER_NAMES) };
  return { stage: pointer.option('stage', STAGE_PLACES) };
}

function readQuestion(step: EntryReader): Question {
  const entries = ['text', 'answers', 'right'];
  const question = new EntryReader(step.get('question'), step.placeOf('question'), entries, step.problems);
  const text = question.text('text', LONGEST_PARAGRAPH);
  const answers = question.lines('answers', [2, 4], LONGEST_LINE);
  const last = Math.max(answers.length - 1, 1);
  const row = linear('', '', [0, last], 0, 'The right answer, counted from 0', { integer: true });
  return { text, answers, right: question.number('right', row) };
}

/** Without a legal scene, changes cannot be checked. */
function readRun(step: EntryReader, start: Parameters | undefined): StepRun {
  const entries = ['seconds', 'pace', 'hand', 'changes'];
  const run = new EntryReader(step.get('run'), step.placeOf('run'), entries, step.problems);
  const seconds = run.number('seconds', SECONDS);
  const pace = run.number('pace', PACE, 1);
  return {
    seconds,
    pace,
    hand: readHand(run, seconds),
    changes: start ? readChanges(run, seconds, start) : [],
  };
}

/** Times of events go forwards and end with the run. */
const timeRow = (earliest: number, latest: number) =>
  linear('', 's', [earliest, latest], earliest, 'Time in the run');

function readHand(run: EntryReader, seconds: number): HandPoint[] {
  let earliest = 0;
  return run.list('hand', [0, MAX_EVENTS]).map(({ value, place }) => {
    const point = new EntryReader(value, place, ['time', 'to'], run.problems);
    const time = point.number('time', timeRow(earliest, seconds));
    earliest = time;
    return { time, to: point.get('to') === null ? null : point.number('to', HAND_ROW) };
  });
}

function readChanges(run: EntryReader, seconds: number, start: Parameters): TimedChange[] {
  let earliest = 0;
  let parameters = start;
  return run.list('changes', [0, MAX_EVENTS]).map(({ value, place }) => {
    const change = new EntryReader(value, place, ['time', 'parameters'], run.problems);
    const time = change.number('time', timeRow(earliest, seconds));
    earliest = time;
    const checked = checkChange(change.get('parameters'), change.placeOf('parameters'), parameters);
    if ('problems' in checked) run.problems.push(...checked.problems);
    else parameters = { ...parameters, ...checked.changes };
    return { time, parameters: 'changes' in checked ? checked.changes : {} };
  });
}

import { at } from '../../../shared/core/at.ts';
import { parameterLabel } from '../../../shared/core/parameters/labels.ts';
import type { ParameterName } from '../../../shared/core/parameters/table.ts';
import {
  CHART_PLACES,
  GAUGE_PLACES,
  type Lesson,
  type LessonStep,
  MAX_MEASURES,
  type Pointer,
  STAGE_PLACES,
} from '../../../shared/lesson/lesson.ts';
import { sourceLabel } from '../../../shared/lesson/measureText.ts';
import { button, element } from '../../ui/dom.ts';
import { figureGroups, measuresFigure, withFigure, withoutStep, withStep, withStepMoved } from './draft.ts';
import { linesField, linesOf, paragraphField, textField } from './textFields.ts';

interface StepEditorOptions {
  readonly lesson: Lesson;
  readonly index: number;
  /** Whether its fields are unfolded. */
  readonly isOpen: boolean;
  /** What is set in the step that its scene on the shelf has otherwise. */
  readonly changed: readonly ParameterName[];
  /** The lesson with the step otherwise; what is typed needs no new form. */
  write(lesson: (now: Lesson) => Lesson): void;
  /** The lesson with its steps otherwise; `focus` is the step to go on with. */
  rearrange(lesson: (now: Lesson) => Lesson, focus: number): void;
}

/** One step of a lesson that is written: what is said, asked and pointed at, and its place. */
export function stepEditor(options: StepEditorOptions): HTMLElement {
  const { lesson, index, isOpen, write, rearrange } = options;
  const step = at(lesson.steps, index);
  const set = (changes: Partial<LessonStep>) => write((now) => withStep(now, index, changes));
  const number = index + 1;
  const move = (by: -1 | 1, text: string, isAtEnd: boolean) => {
    const made = button(text, () => rearrange((now) => withStepMoved(now, index, by), index + by), {
      'aria-label': `Step ${number} ${text.toLowerCase()}`,
    });
    made.disabled = isAtEnd;
    return made;
  };
  return element(
    'details',
    { class: 'lesson-step', open: isOpen },
    element('summary', {}, `Step ${number}: ${step.title}`),
    element('p', { class: 'lesson-recorded' }, recordedText(step)),
    textField('Title of the step', step.title, (title) => set({ title })),
    paragraphField('Text, read aloud', step.text, (text) => set({ text }), 3),
    ...questionFields(step, set),
    ...pointerFields(options, step, set),
    ...figureFields(options, step),
    paragraphField('Answer, read aloud', step.answer.text, answerSetter(options, 'text'), 3),
    paragraphField('What the model leaves out', step.answer.notShown, answerSetter(options, 'notShown'), 2),
    paragraphField('Notes for the trainer', step.notes, (notes) => set({ notes }), 2),
    element(
      'div',
      { class: 'lesson-list-ways' },
      move(-1, 'Earlier', index === 0),
      move(1, 'Later', number === lesson.steps.length),
      button('Delete', () => rearrange((now) => withoutStep(now, index), Math.max(0, index - 1)), {
        'aria-label': `Delete step ${number}`,
      }),
    ),
  );
}

function answerSetter({ index, write }: StepEditorOptions, part: 'text' | 'notShown') {
  return (text: string) =>
    write((now) => withStep(now, index, { answer: { ...at(now.steps, index).answer, [part]: text } }));
}

/** What was recorded: 'Shuttle. Runs for 2.5 s; pulled by hand; 2 changes.' */
function recordedText({ scene, run }: LessonStep): string {
  if (!run) return `${scene.title}. It does not run.`;
  const parts = [
    `runs for ${run.seconds.toFixed(1)} s at ${run.pace} × real time`,
    ...(run.hand.length > 0 ? ['pulled by hand'] : []),
    ...(run.changes.length > 0 ? [`parameters change ${run.changes.length} times`] : []),
  ];
  return `${scene.title}: ${parts.join('; ')}.`;
}

type Set = (changes: Partial<LessonStep>) => void;

/** Without an answer to choose from nothing is asked. */
function questionFields({ question }: LessonStep, set: Set): HTMLElement[] {
  const asked = { text: question?.text ?? '', answers: question?.answers ?? [], right: question?.right ?? 0 };
  const ask = () => {
    set({ question: asked.text || asked.answers.length > 0 ? { ...asked } : null });
  };
  const right = textField('Number of the right answer', String(asked.right + 1), (text) => {
    asked.right = Number(text) - 1;
    ask();
  });
  return [
    paragraphField(
      'Question',
      asked.text,
      (text) => {
        asked.text = text;
        ask();
      },
      2,
    ),
    linesField(
      'Answers, one a line, two to four',
      asked.answers.join('\n'),
      (text) => {
        asked.answers = linesOf(text);
        ask();
      },
      3,
    ),
    right,
  ];
}

function pointerFields({ changed }: StepEditorOptions, step: LessonStep, set: Set): HTMLElement[] {
  const chosen = new Map(step.pointAt.map((pointer) => [JSON.stringify(pointer), pointer]));
  const named: (readonly [string, Pointer])[] = [
    ...CHART_PLACES.map((chart) => [`${chart} chart`, { chart }] as const),
    ...GAUGE_PLACES.map((gauge) => [`${gauge} gauge`, { gauge }] as const),
    ...STAGE_PLACES.map((stage) => [stage, { stage }] as const),
    ...changed.map((field) => [parameterLabel(field), { field }] as const),
  ];
  return [
    checks(
      'Point at, six at most',
      named.map(([label, pointer]) => {
        const key = JSON.stringify(pointer);
        const choose = (wanted: boolean) => {
          if (wanted) chosen.set(key, pointer);
          else chosen.delete(key);
          set({ pointAt: [...chosen.values()] });
        };
        return { label, isOn: chosen.has(key), choose };
      }),
    ),
  ];
}

function figureFields({ index, write }: StepEditorOptions, step: LessonStep): HTMLElement[] {
  const groups = figureGroups(step).map(({ heading, sources }) => {
    const figures = sources.map((source) => ({
      label: sourceLabel(source),
      isOn: measuresFigure(step, source),
      choose: (wanted: boolean) => write((now) => withFigure(now, index, source, wanted)),
    }));
    return checks(heading, figures);
  });
  const legend = `Measured, and shown with the answer, ${MAX_MEASURES} at most`;
  return [element('details', { class: 'lesson-figure-groups' }, element('summary', {}, legend), ...groups)];
}

interface Check {
  readonly label: string;
  readonly isOn: boolean;
  choose(wanted: boolean): void;
}

function checks(legend: string, each: readonly Check[]): HTMLElement {
  const boxes = each.map(({ label, isOn, choose }) => {
    const box = element('input', { type: 'checkbox', checked: isOn, onchange: () => choose(box.checked) });
    return element('label', {}, box, label);
  });
  return element('fieldset', { class: 'lesson-checks' }, element('legend', {}, legend), ...boxes);
}

import './results.css';
import './verdict.css';
import { KITS } from '../../scenes/index.ts';
import type { JudgedLane, Judgement } from '../../shared/study/verdict.ts';
import { searchFlips } from '../../shared/verdict/flips.ts';
import { judge } from '../../shared/verdict/verdict.ts';
import { button, element } from '../app/dom.ts';
import { laneLetterMark } from '../lanes/laneName.ts';
import { watchResults } from './changes.ts';
import { createMissingLanes } from './missingLanes.ts';
import { isSimulated } from './simulatedLane.ts';
import type { Pane, StudyActions, StudyState } from './state.ts';
import { verdictTable } from './verdictTable.ts';

export interface VerdictPaneOptions {
  readonly onReport: () => void;
}

const IN_METRIC = 'Sentences, causes and reasons are in metric units, also where the table is not.';
const CHANGES = 'What would change the choice';

/** Which drive, and why: the choice first, then everything it rests on. Worked out only while it is in sight, and only when something is new. */
export function createVerdictPane(actions: StudyActions, { onReport }: VerdictPaneOptions): Pane {
  const missing = createMissingLanes(actions);
  const content = element('div', { class: 'verdict-content' });
  const changes = element('section');
  let toCome = 0;
  const pane = element('div', { class: 'verdict-pane' }, missing.element, content);
  let state: StudyState | null = null;
  let isShown = true;
  const isNew = watchResults();

  function refresh(): void {
    if (!state || !isShown) return;
    missing.show(state);
    if (!isNew(state)) return;
    const { study, lanes } = state;
    const known = lanes.filter(isSimulated);
    window.clearTimeout(toCome);
    content.replaceChildren(...(known.length > 0 ? parts(judge(study.job, known), known, state) : []));
    changes.replaceChildren(title(CHANGES), element('p', { class: 'verdict-note' }, 'Being worked out …'));
    if (known.length === 0) return;
    const search = searchFlips(study.job, known, KITS);
    // A step at a time: it takes hundreds of sizings, and the page goes on in between.
    const go = () => {
      const { done, value } = search.next();
      if (!done) toCome = window.setTimeout(go);
      else
        changes.replaceChildren(
          title(CHANGES),
          ...list(
            'ol',
            value.flips.map(({ sentence }) => sentence),
            value.flipNote,
          ),
        );
    };
    toCome = window.setTimeout(go);
  }

  function parts(
    found: Judgement,
    known: readonly JudgedLane[],
    { lanes, units }: StudyState,
  ): HTMLElement[] {
    const toBench = (lane: JudgedLane) => () =>
      actions.openOnBench(lanes.findIndex(({ letter }) => letter === lane.letter));
    return [
      choice(found, known, toBench, onReport),
      verdictTable(found, known, units, toBench),
      ...(found.sentences.length > 0
        ? [element('section', {}, title('What stands out'), ...list('ul', found.sentences))]
        : []),
      changes,
      element(
        'section',
        {},
        title('How it was chosen'),
        ...paragraphs(found.rule, found.fairness, ...(units === 'metric' ? [] : [IN_METRIC])),
      ),
    ];
  }

  return {
    element: pane,
    show(now) {
      state = now;
      refresh();
    },
    setShown(shown) {
      isShown = shown;
      refresh();
    },
  };
}

type ToBench = (lane: JudgedLane) => () => void;

function choice(
  { choice: words, first, shortfalls }: Judgement,
  known: readonly JudgedLane[],
  toBench: ToBench,
  onReport: () => void,
): HTMLElement {
  const chosen = first.map((place) => known[place]!);
  const failing = shortfalls.some((each) => each.length > 0);
  const state = first.length === 0 ? 'none' : failing ? 'some' : 'all';
  return element(
    'section',
    { class: 'verdict-choice', 'data-passes': state },
    element('h2', {}, ...headline(chosen, known)),
    element('p', { class: 'verdict-words' }, words),
    element(
      'div',
      { class: 'verdict-ways' },
      ...chosen.map((lane) => button(`Put ${lane.letter} on the bench`, toBench(lane), { class: 'primary' })),
      button('Report …', onReport, { title: 'The whole study on paper, or as a file to send' }),
    ),
  );
}

/** The choice in as few words as it has. */
function headline(chosen: readonly JudgedLane[], known: readonly JudgedLane[]): (Node | string)[] {
  if (chosen.length === 0)
    return [known.length > 1 ? 'None of these drives does the job' : 'It does not do the job'];
  return chosen.flatMap((lane, k) => [
    ...(k > 0 ? [' or '] : []),
    laneLetterMark(lane.letter),
    ` ${lane.title}`,
  ]);
}

function title(words: string): HTMLElement {
  return element('h3', {}, words);
}

function paragraphs(...texts: readonly string[]): HTMLElement[] {
  return texts.map((words) => element('p', {}, words));
}

function list(tag: 'ul' | 'ol', sentences: readonly string[], note = ''): HTMLElement[] {
  const items = sentences.map((words) => element('li', {}, words));
  return [
    ...(items.length > 0 ? [element(tag, {}, ...items)] : []),
    ...(note === '' ? [] : [element('p', { class: 'verdict-note' }, note)]),
  ];
}

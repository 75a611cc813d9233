import './results.css';
import './verdict.css';
import { PRESETS } from '../../../scenes/index.ts';
import { searchFlips } from '../../../shared/verdict/flips.ts';
import type { JudgedCandidate, Judgement } from '../../../shared/verdict/judgement.ts';
import { judge } from '../../../shared/verdict/verdict.ts';
import { candidateLetterMark } from '../../sideBySide/candidateName.ts';
import { watchResults } from '../../studyState/changes.ts';
import { isSimulated } from '../../studyState/simulatedCandidate.ts';
import type { Pane, StudyActions, StudyState } from '../../studyState/state.ts';
import { button, element } from '../../ui/dom.ts';
import { createMissingCandidates } from './missingCandidates.ts';
import { verdictTable } from './verdictTable.ts';

export interface VerdictPaneOptions {
  readonly onReport: () => void;
}

const IN_METRIC = 'Sentences, causes and reasons are in metric units, also where the table is not.';
const CHANGES = 'What would change the choice';

/** Which drive, and why: the choice first, then everything it rests on. Worked out only while it is in sight, and only when something is new. */
export function createVerdictPane(actions: StudyActions, { onReport }: VerdictPaneOptions): Pane {
  const missing = createMissingCandidates(actions);
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
    const { study, candidates } = state;
    const known = candidates.filter(isSimulated);
    window.clearTimeout(toCome);
    content.replaceChildren(...(known.length > 0 ? parts(judge(study.job, known), known, state) : []));
    changes.replaceChildren(title(CHANGES), element('p', { class: 'verdict-note' }, 'Being worked out …'));
    if (known.length === 0) return;
    const search = searchFlips(study.job, known, PRESETS);
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
    known: readonly JudgedCandidate[],
    { candidates, units }: StudyState,
  ): HTMLElement[] {
    const toBench = (candidate: JudgedCandidate) => () =>
      actions.openOnBench(candidates.findIndex(({ letter }) => letter === candidate.letter));
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

type ToBench = (candidate: JudgedCandidate) => () => void;

function choice(
  { choice: text, first, shortfalls }: Judgement,
  known: readonly JudgedCandidate[],
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
    element('p', { class: 'verdict-words' }, text),
    element(
      'div',
      { class: 'verdict-ways' },
      ...chosen.map((candidate) =>
        button(`Put ${candidate.letter} on the bench`, toBench(candidate), { class: 'primary' }),
      ),
      button('Report …', onReport, { title: 'The whole study on paper, or as a file to send' }),
    ),
  );
}

/** The choice in as few words as it has. */
function headline(chosen: readonly JudgedCandidate[], known: readonly JudgedCandidate[]): (Node | string)[] {
  if (chosen.length === 0)
    return [known.length > 1 ? 'None of these drives does the job' : 'It does not do the job'];
  return chosen.flatMap((candidate, k) => [
    ...(k > 0 ? [' or '] : []),
    candidateLetterMark(candidate.letter),
    ` ${candidate.title}`,
  ]);
}

function title(text: string): HTMLElement {
  return element('h3', {}, text);
}

function paragraphs(...texts: readonly string[]): HTMLElement[] {
  return texts.map((text) => element('p', {}, text));
}

function list(tag: 'ul' | 'ol', sentences: readonly string[], note = ''): HTMLElement[] {
  const items = sentences.map((text) => element('li', {}, text));
  return [
    ...(items.length > 0 ? [element(tag, {}, ...items)] : []),
    ...(note === '' ? [] : [element('p', { class: 'verdict-note' }, note)]),
  ];
}

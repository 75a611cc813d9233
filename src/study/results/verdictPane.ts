import '../parts/parts.css';
import './verdict.css';
import { rangesOf } from '../../../shared/study/ranges.ts';
import { decisiveRows } from '../../../shared/verdict/decisive.ts';
import type { JudgedCandidate, Judgement } from '../../../shared/verdict/judgement.ts';
import { candidateLetterMark } from '../../sideBySide/candidateName.ts';
import { watchChanges } from '../../studyState/changes.ts';
import { isSimulated } from '../../studyState/simulatedCandidate.ts';
import type { Pane, StudyActions, StudyState, VerdictState } from '../../studyState/state.ts';
import { firstTable } from '../../studyState/tables/sizingRows.ts';
import { verdictTable } from '../../studyState/tables/verdictRows.ts';
import { button, element } from '../../ui/dom.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { FigureTableView } from '../parts/figureTable.ts';
import { createMissingCandidates } from '../parts/missingCandidates.ts';
import { flipProgress } from '../parts/verdictProgress.ts';
import { ConfidencePart } from './confidencePart.ts';
import { decisiveBars } from './decisiveBars.ts';

interface VerdictPaneOptions {
  readonly onReport: () => void;
}

/** Differences that are shown at once. */
const KEY = 4;

/** Which drive, and why: the choice first, then everything it rests on. It is worked out only once it is looked at. */
export class VerdictPane implements Pane {
  readonly element: HTMLElement;
  readonly #actions: StudyActions;
  readonly #onReport: () => void;
  readonly #missing;
  readonly #first = new FigureTableView();
  readonly #content = element('div', { class: 'verdict-content' });
  readonly #changes = element('section');
  readonly #sure: ConfidencePart;
  readonly #table: FigureTableView;
  readonly #isNew = watchChanges();
  readonly #isFirstNew = watchChanges();
  #state: StudyState | null = null;
  #isShown = true;

  constructor(actions: StudyActions, { onReport }: VerdictPaneOptions) {
    this.#actions = actions;
    this.#onReport = onReport;
    this.#sure = new ConfidencePart(actions);
    this.#missing = createMissingCandidates(actions);
    this.#table = new FigureTableView({
      columnFoot: ({ letter = '' }) =>
        button('To the bench', () => this.#toBench(letter), { 'aria-label': `To the bench: ${letter}` }),
    });
    this.element = element(
      'div',
      { class: 'verdict-pane' },
      this.#missing.element,
      this.#content,
      this.#first.element,
    );
  }

  show(state: StudyState): void {
    this.#state = state;
    this.#refresh();
  }

  setShown(isShown: boolean): void {
    this.#isShown = isShown;
    this.#refresh();
  }

  #refresh(): void {
    const state = this.#state;
    if (!state || !this.#isShown) return;
    this.#missing.show(state);
    const missing = state.candidates.filter((candidate) => !isSimulated(candidate));
    this.#first.element.hidden = missing.length === 0;
    const isOther = this.#isFirstNew(...missing.flatMap(({ letter, sizing }) => [letter, sizing]));
    if (isOther && missing.length > 0)
      this.#first.show('From sizing, not simulated yet', firstTable(missing));
    const known = state.candidates.filter(isSimulated);
    if (known.length > 0) this.#actions.judge();
    const { judgement } = state.verdict;
    if (this.#isNew(judgement, known.length))
      this.#content.replaceChildren(
        ...(known.length === 0 ? [] : judgement ? this.#parts(judgement, known) : waiting()),
      );
    // After the search for changes, so that the two do not wait for each other.
    if (state.verdict.flips && !state.isRunning) this.#actions.confide();
    this.#sure.element.hidden = state.isRunning;
    this.#sure.show(rangesOf(state.study), state.confidence);
    this.#changes.replaceChildren(title('What would change the choice'), ...changes(state.verdict));
  }

  #parts(judgement: Judgement, known: readonly JudgedCandidate[]): HTMLElement[] {
    const { sentences, rule, fairness } = judgement;
    this.#table.show('Figures of the drives', verdictTable(judgement, known));
    const letters = known.map(({ letter }) => letter);
    return [
      this.#choice(judgement, known),
      this.#sure.element,
      decisiveBars(decisiveRows(judgement, letters), letters),
      ...(sentences.length > 0
        ? [element('section', {}, title('Key differences'), ...list('ul', sentences.slice(0, KEY)))]
        : []),
      this.#changes,
      ...(sentences.length > KEY ? [folded('More differences', ...list('ul', sentences.slice(KEY)))] : []),
      folded('All figures', this.#table.element),
      folded('How the choice is made', ...[rule, fairness].map((text) => element('p', {}, unbroken(text)))),
    ];
  }

  #choice({ choice, first, shortfalls }: Judgement, known: readonly JudgedCandidate[]): HTMLElement {
    const chosen = known.filter((_, place) => first.includes(place));
    const failing = shortfalls.some((each) => each.length > 0);
    return element(
      'section',
      { class: 'verdict-choice', 'data-passes': chosen.length === 0 ? 'none' : failing ? 'some' : 'all' },
      element('h2', {}, ...headline(chosen, known)),
      element('p', { class: 'verdict-words' }, unbroken(choice)),
      element(
        'div',
        { class: 'verdict-ways' },
        ...chosen.map(({ letter }) =>
          button(`Put ${letter} on the bench`, () => this.#toBench(letter), { class: 'primary' }),
        ),
        button('Report …', this.#onReport, { title: 'The whole study on paper, or as a file to send' }),
      ),
    );
  }

  #toBench(letter: string): void {
    const index = this.#state?.candidates.findIndex((candidate) => candidate.letter === letter) ?? -1;
    this.#actions.openOnBench(index);
  }
}

function waiting(): HTMLElement[] {
  return [element('p', { class: 'verdict-note', role: 'status' }, 'Comparing the drives …')];
}

function changes({ flips, share, error }: VerdictState): HTMLElement[] {
  if (error !== null) return [element('p', { class: 'verdict-note', role: 'alert' }, error)];
  if (flips === null) return [element('p', { class: 'verdict-note' }, `Still ${flipProgress(share)} …`)];
  return list(
    'ol',
    [
      ...(flips.robustness === '' ? [] : [flips.robustness]),
      ...flips.purchases,
      ...flips.flips.map(({ sentence }) => sentence),
    ],
    flips.flipNote,
  );
}

/** The choice in as few words as it has. */
function headline(chosen: readonly JudgedCandidate[], known: readonly JudgedCandidate[]): (Node | string)[] {
  if (chosen.length === 0)
    return [
      known.length > 1 ? 'None of these drives meets the requirements' : 'It does not meet the requirements',
    ];
  return chosen.flatMap((candidate, k) => [
    ...(k > 0 ? [' or '] : []),
    candidateLetterMark(candidate.letter),
    ` ${candidate.title}`,
  ]);
}

/** What is read only by who asks for it. */
function folded(text: string, ...content: Node[]): HTMLElement {
  return element('details', {}, element('summary', {}, title(text)), ...content);
}

function title(text: string): HTMLElement {
  return element('h3', {}, text);
}

function list(tag: 'ul' | 'ol', sentences: readonly string[], note = ''): HTMLElement[] {
  const items = sentences.map((text) => element('li', {}, unbroken(text)));
  return [
    ...(items.length > 0 ? [element(tag, {}, ...items)] : []),
    ...(note === '' ? [] : [element('p', { class: 'verdict-note' }, unbroken(note))]),
  ];
}

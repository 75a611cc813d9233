import { ranged } from '../../shared/core/format.ts';
import { MOVE_FIGURES, type MoveFigureName, moveFigureText } from '../../shared/figures/moveFigures.ts';
import type { MoveFigures } from '../../shared/protocol/axis.ts';
import { button, element, setText } from '../ui/dom.ts';
import { keyOf } from '../ui/keys.ts';
import { labelled } from '../ui/picker.ts';
import { ROWS } from './rows.ts';
import { WINDOWS } from './windows.ts';

/** The most telling first: the bar shows as many as fit, and all stand in a list of their own. */
const SHOWN: readonly MoveFigureName[] = [
  'peakError',
  'settlingTime',
  'rmsError',
  'currentHeadroom',
  'rmsForce',
  'peakCurrent',
  'copperLoss',
];

/** The chart that is presented first. */
export const FIRST_PRESENTED = 'Following error';

interface ChartBarOptions {
  /** Another chart is to be shown at the presenter size. */
  onPresent(title: string): void;
  onWindow(seconds: number): void;
  onFreeze(): void;
  onFigures(): void;
  onPin(): void;
  onDifferences(): void;
}

/** Above the charts: the figures of the last move, and how much time is shown. */
export class ChartBar {
  readonly element: HTMLElement;
  readonly #options: ChartBarOptions;
  readonly #figures = new FiguresLine();
  readonly #freeze: HTMLButtonElement;
  readonly #pin: HTMLButtonElement;
  readonly #differences: HTMLButtonElement;
  readonly #window = element(
    'select',
    { onchange: () => this.#chooseWindow() },
    ...WINDOWS.map((seconds) =>
      element('option', { value: seconds }, seconds < 1 ? `${seconds * 1000} ms` : `${seconds} s`),
    ),
  );
  readonly #presented = element(
    'select',
    { onchange: () => this.#options.onPresent(this.#presented.value) },
    ...ROWS.map(({ title }) =>
      element('option', { value: title, selected: title === FIRST_PRESENTED }, title),
    ),
  );
  /** Stands in the box while the charts show another length of time than those it offers. */
  readonly #zoomed = element('option', { hidden: true });
  #hasChosen = false;
  #seconds = Number.NaN;
  #shown: MoveFigures | null | undefined;

  constructor(options: ChartBarOptions) {
    this.#options = options;
    this.#freeze = button('Freeze', options.onFreeze, { keys: keyOf('freeze') });
    this.#pin = button('Pin run', options.onPin, {
      title: 'Keep the last cycle behind the following ones, or remove it',
      keys: keyOf('pin'),
    });
    this.#pin.setAttribute('aria-pressed', 'false');
    this.#differences = button('Differences', options.onDifferences, {
      title: 'The present run compared with the pinned one, in figures',
      keys: keyOf('differences'),
    });
    this.#differences.hidden = true;
    this.#window.append(this.#zoomed);
    this.element = element(
      'div',
      { class: 'chart-bar' },
      this.#figures.element,
      button('Figures', options.onFigures, {
        title: 'All figures of the last move, with definitions',
        keys: keyOf('figures'),
      }),
      this.#pin,
      this.#differences,
      element('div', { class: 'presenter-only' }, labelled('Chart', this.#presented)),
      labelled('Window', this.#window),
      this.#freeze,
    );
  }

  /** Sets a window, unless a person has chosen one. */
  suggestWindow(seconds: number): void {
    if (this.#hasChosen) return;
    this.#window.value = String(seconds);
    this.#options.onWindow(seconds);
  }

  /** How much time the charts show, s: the box says so too after zooming. */
  showWindow(seconds: number): void {
    if (seconds === this.#seconds) return;
    this.#seconds = seconds;
    const isOffered = WINDOWS.some((each) => each === seconds);
    this.#zoomed.hidden = isOffered;
    this.#zoomed.textContent = isOffered ? '' : `zoomed to ${ranged(seconds, 's')}`;
    this.#zoomed.value = isOffered ? '' : String(seconds);
    this.#window.value = String(seconds);
  }

  showFrozen(frozen: boolean): void {
    this.#freeze.setAttribute('aria-pressed', String(frozen));
    setText(this.#freeze, frozen ? 'Frozen' : 'Freeze');
  }

  showPinned(pinned: boolean): void {
    this.#pin.setAttribute('aria-pressed', String(pinned));
    setText(this.#pin, pinned ? 'Pinned' : 'Pin run');
    this.#differences.hidden = !pinned;
  }

  showMove(move: MoveFigures | null): void {
    if (this.#shown !== undefined && sameMove(move, this.#shown)) return;
    this.#shown = move;
    this.refresh();
  }

  /** The same figures again, after a change of the units in which they are printed. */
  refresh(): void {
    this.#figures.show(this.#shown ?? null);
  }

  #chooseWindow(): void {
    this.#hasChosen = true;
    this.#options.onWindow(Number(this.#window.value));
  }
}

/** Moves of two runs may have the same number, hardly the same error. */
function sameMove(a: MoveFigures | null, b: MoveFigures | null): boolean {
  return a?.index === b?.index && a?.peakError === b?.peakError;
}

/** The figures of the last move in one line: labels stay, numbers are written. */
class FiguresLine {
  readonly element = element('p', { class: 'figures' });
  readonly #move = element('span');
  readonly #values = SHOWN.map((name) => [name, element('b')] as const);
  readonly #figures = this.#values.map(([name, value]) => {
    const { label, definition, quantity } = MOVE_FIGURES[name];
    const attributes = { class: 'figure', title: definition, style: `--tint: var(--q-${quantity})` };
    return element('span', attributes, `${label} `, value);
  });

  show(move: MoveFigures | null): void {
    if (!move) {
      setText(this.element, 'No move finished yet.');
      return;
    }
    setText(this.#move, `Move ${move.index + 1}:`);
    for (const [name, value] of this.#values) setText(value, moveFigureText(name, move[name]));
    if (this.#move.parentElement !== this.element) this.element.replaceChildren(this.#move, ...this.#figures);
  }
}

import { MOVE_FIGURES, type MoveFigureName, moveFigureText } from '../../shared/figures/moveFigures.ts';
import type { MoveFigures } from '../../shared/protocol/axis.ts';
import { WINDOWS } from '../charts/windows.ts';
import { button, element, setText } from '../ui/dom.ts';
import { keyOf } from '../ui/keys.ts';
import { labelled } from '../ui/picker.ts';

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

export interface ChartBarOptions {
  onWindow(seconds: number): void;
  onFreeze(): void;
  onFigures(): void;
  onPin(): void;
  onDifferences(): void;
}

export interface ChartBar {
  readonly element: HTMLElement;
  /** Sets a window, unless a person has chosen one. */
  suggestWindow(seconds: number): void;
  showFrozen(frozen: boolean): void;
  showPinned(pinned: boolean): void;
  showMove(figures: MoveFigures | null): void;
}

/** Above the charts: the figures of the last move, and how much time is shown. */
export function createChartBar(options: ChartBarOptions): ChartBar {
  const { onWindow, onFreeze, onFigures, onPin, onDifferences } = options;
  const figures = element('p', { class: 'figures' });
  const freeze = button('Freeze', onFreeze, { keys: keyOf('freeze') });
  const all = button('Figures', onFigures, {
    title: 'All figures of the last move, and what they mean',
    keys: keyOf('figures'),
  });
  const pin = button('Pin run', onPin, {
    title: 'Keep the last cycle beneath what comes after, or let go of it',
    keys: keyOf('pin'),
  });
  pin.setAttribute('aria-pressed', 'false');
  const differences = button('Differences', onDifferences, {
    title: 'The present run against the pinned one, in figures',
    keys: keyOf('differences'),
  });
  differences.hidden = true;
  const select = element(
    'select',
    {
      onchange: () => {
        hasChosen = true;
        onWindow(Number(select.value));
      },
    },
    ...WINDOWS.map((seconds) =>
      element('option', { value: seconds }, seconds < 1 ? `${seconds * 1000} ms` : `${seconds} s`),
    ),
  );
  let hasChosen = false;
  let shown: MoveFigures | null | undefined;

  return {
    element: element(
      'div',
      { class: 'chart-bar' },
      figures,
      all,
      pin,
      differences,
      labelled('Window', select),
      freeze,
    ),
    suggestWindow(seconds) {
      if (hasChosen) return;
      select.value = String(seconds);
      onWindow(seconds);
    },
    showFrozen(frozen) {
      freeze.setAttribute('aria-pressed', String(frozen));
      setText(freeze, frozen ? 'Frozen' : 'Freeze');
    },
    showPinned(pinned) {
      pin.setAttribute('aria-pressed', String(pinned));
      setText(pin, pinned ? 'Pinned' : 'Pin run');
      differences.hidden = !pinned;
    },
    showMove(move) {
      if (shown !== undefined && sameMove(move, shown)) return;
      shown = move;
      figures.replaceChildren(...(move ? moveFigures(move) : ['No move finished yet.']));
    },
  };
}

/** Moves of two runs may have the same number, hardly the same error. */
export function sameMove(a: MoveFigures | null, b: MoveFigures | null): boolean {
  return a?.index === b?.index && a?.peakError === b?.peakError;
}

function moveFigures(move: MoveFigures): HTMLElement[] {
  const figures = SHOWN.map((name) => {
    const { label, definition, quantity } = MOVE_FIGURES[name];
    return element(
      'span',
      { class: 'figure', title: definition, style: `--tint: var(--q-${quantity})` },
      `${label} `,
      element('b', {}, moveFigureText(name, move[name])),
    );
  });
  return [element('span', {}, `Move ${move.index + 1}:`), ...figures];
}

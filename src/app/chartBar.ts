import { ranged } from '../../shared/format.ts';
import type { MoveFigures } from '../../shared/protocol.ts';
import { button, element, setText } from './dom.ts';
import { keyOf } from './keys.ts';
import { labelled } from './picker.ts';

const WINDOWS = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 30];
const FIRST_WINDOW = 2;

export interface ChartBarOptions {
  onWindow(seconds: number): void;
  onFreeze(): void;
}

export interface ChartBar {
  readonly element: HTMLElement;
  showFrozen(frozen: boolean): void;
  showMove(figures: MoveFigures | null): void;
}

/** Above the charts: the figures of the last move, and how much time is shown. */
export function createChartBar({ onWindow, onFreeze }: ChartBarOptions): ChartBar {
  const figures = element('p', { class: 'figures' });
  const freeze = button('Freeze', onFreeze, { keys: keyOf('freeze') });
  const select = element(
    'select',
    { onchange: () => onWindow(Number(select.value)) },
    ...WINDOWS.map((seconds) =>
      element(
        'option',
        { value: seconds, selected: seconds === FIRST_WINDOW },
        seconds < 1 ? `${seconds * 1000} ms` : `${seconds} s`,
      ),
    ),
  );
  onWindow(FIRST_WINDOW);
  let shown: MoveFigures | null | undefined;

  return {
    element: element('div', { class: 'chart-bar' }, figures, labelled('Window', select), freeze),
    showFrozen(frozen) {
      freeze.setAttribute('aria-pressed', String(frozen));
      setText(freeze, frozen ? 'Frozen' : 'Freeze');
    },
    showMove(move) {
      if (shown !== undefined && move?.index === shown?.index && move?.peakError === shown?.peakError) return;
      shown = move;
      figures.replaceChildren(...(move ? moveFigures(move) : ['No move finished yet.']));
    },
  };
}

function moveFigures(move: MoveFigures): HTMLElement[] {
  const figure = (words: string, value: string, quantity = '') =>
    element(
      'span',
      { class: 'figure', ...(quantity && { style: `--tint: var(--q-${quantity})` }) },
      `${words} `,
      element('b', {}, value),
    );
  const { settlingTime } = move;
  return [
    figure(`Move ${move.index + 1}:`, ranged(move.duration, 's')),
    figure('peak error', ranged(move.peakError, 'µm'), 'error'),
    figure('rms error', ranged(move.rmsError, 'µm'), 'error'),
    figure('settled', settledWords(settlingTime), 'error'),
    figure('rms force', ranged(move.rmsForce, 'N'), 'force'),
    figure('peak current', ranged(move.peakCurrent, 'A'), 'current'),
    figure('copper loss', ranged(move.copperLoss, 'W'), 'heat'),
  ];
}

function settledWords(seconds: number | null): string {
  if (seconds === null) return 'not yet';
  return seconds === 0 ? 'at once' : `in ${ranged(seconds, 'ms')}`;
}

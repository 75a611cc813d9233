import { inUnit, ranged } from '../../../shared/core/format.ts';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { button, element } from '../../ui/dom.ts';
import { judgedFigure, pointText } from './pretuneText.ts';

/** Largest and least diameter of a point, rem: it grows with the current. */
const SIZE = [0.75, 1.375] as const;
/** Room for what did not settle or tripped, as a share of the height. */
const SHELF = 0.14;

/**
 * Every point a simulated run: peak sensitivity to the right, what is judged upwards, rms current as size. Each is a button that makes
 * its tuning live.
 */
export function createTradeOff(result: PretuneResult, onChoose: (point: TuningPoint) => void): HTMLElement {
  const points = result.points.filter((point) => Number.isFinite(point.peakSensitivity));
  const across = extent(points.map((point) => point.peakSensitivity));
  const values = points.map((point) => (point.trip ? null : judgedFigure(result, point)));
  const up = extent([0, ...values.filter((value) => value !== null)]);
  const current = extent(points.map((point) => point.rmsCurrent));
  const unit = result.figure === 'settling time' ? 's' : 'm';
  const plot = element(
    'div',
    { class: 'trade-plot', role: 'group', 'aria-label': 'Trade-off' },
    ...points.map((point, i) => {
      const value = values[i]!;
      const height = value === null ? 1 : (1 - SHELF) * share(value, up);
      const mark = button('', () => onChoose(point), {
        class: `trade-point is-${point.origin.replaceAll(' ', '-')}`,
        title: `${pointText(result, point)}. Press to make it live.`,
        'aria-label': pointText(result, point),
      });
      mark.style.left = `${100 * share(point.peakSensitivity, across)}%`;
      mark.style.bottom = `${100 * height}%`;
      mark.style.setProperty(
        '--size',
        `${SIZE[0] + (SIZE[1] - SIZE[0]) * share(point.rmsCurrent, current)}rem`,
      );
      return mark;
    }),
  );
  return element(
    'figure',
    { class: 'trade' },
    element(
      'p',
      { class: 'trade-up' },
      `${result.figure}, 0 to ${ranged(up[1], unit)}; what did not settle stands at the top`,
    ),
    plot,
    element(
      'figcaption',
      {},
      `Peak sensitivity from ${inUnit(across[0], '', 3)} (robust) to ${inUnit(across[1], '', 3)} (lively). `,
      'Circles are pretuned, squares textbook, the diamond is the tuning as it was; larger ones draw more current. Press one to make it live.',
    ),
  );
}

function extent(values: readonly number[]): readonly [number, number] {
  return [Math.min(...values), Math.max(...values)];
}

function share(value: number, [low, high]: readonly [number, number]): number {
  return high > low ? (value - low) / (high - low) : 0.5;
}

import { inUnit, ranged } from '../../../shared/core/format.ts';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { rangeOf } from '../../plot/range.ts';
import { linearScale, type Scale } from '../../plot/scale.ts';
import { button, element } from '../../ui/dom.ts';
import { judgedFigure, pointText } from './pretuneText.ts';

/** Smallest and largest diameter of a point, rem: it grows with the current. */
const SIZE = [0.75, 1.375] as const;
/** Room for what did not settle or tripped, as a share of the height. */
const SHELF = 0.14;

/** Where a simulated run lies in the chart. */
interface TradeOffPlace {
  readonly point: TuningPoint;
  /** Shares of the width from the left and of the height from the foot. */
  readonly x: number;
  readonly y: number;
  /** Diameter, rem. */
  readonly size: number;
}

/** All runs whose peak sensitivity is finite, and the ends of both scales. */
interface TradeOff {
  readonly places: readonly TradeOffPlace[];
  /** How many runs have no finite peak sensitivity. */
  readonly missing: number;
  readonly sensitivity: readonly [low: number, high: number];
  /** Of the figure that is judged, SI. */
  readonly highest: number;
}

/**
 * Peak sensitivity to the right, what is judged upwards, rms current as size; what did not settle
 * lies at the top.
 */
export function tradeOffOf(result: PretuneResult): TradeOff {
  const points = result.points.filter((point) => Number.isFinite(point.peakSensitivity));
  const values = points.map((point) => (point.trip ? null : judgedFigure(result, point)));
  const sensitivity = rangeOf(points.map((point) => point.peakSensitivity));
  const [, highest] = rangeOf(
    [0],
    values.filter((value) => value !== null),
  );
  const across = shares(sensitivity, [0, 1]);
  const up = shares([0, highest], [0, 1 - SHELF]);
  const diameter = shares(rangeOf(points.map((point) => point.rmsCurrent)), SIZE);
  const places = points.map((point, k) => {
    const value = values[k] ?? null;
    return {
      point,
      x: across.at(point.peakSensitivity),
      y: value === null || !Number.isFinite(value) ? 1 : up.at(value),
      size: Number.isFinite(point.rmsCurrent) ? diameter.at(point.rmsCurrent) : SIZE[0],
    };
  });
  return { places, missing: result.points.length - points.length, sensitivity, highest };
}

/** The middle of the places where all values are the same. */
function shares([low, high]: readonly [number, number], [start, end]: readonly [number, number]): Scale {
  return high > low ? linearScale(low, high, start, end) : linearScale(low - 1, low + 1, start, end);
}

/** Every point is a simulated run, and a button that makes its tuning live. */
export function createTradeOff(result: PretuneResult, onChoose: (point: TuningPoint) => void): HTMLElement {
  const { places, missing, sensitivity, highest } = tradeOffOf(result);
  const plot = element(
    'div',
    { class: 'trade-plot', role: 'group', 'aria-label': 'Trade-off' },
    ...places.map(({ point, x, y, size }) => {
      const mark = button('', () => onChoose(point), {
        class: `trade-point is-${point.origin.replaceAll(' ', '-')}`,
        title: `${pointText(result, point)}. Press to make it live.`,
        'aria-label': pointText(result, point),
      });
      mark.style.left = `${100 * x}%`;
      mark.style.bottom = `${100 * y}%`;
      mark.style.setProperty('--size', `${size}rem`);
      return mark;
    }),
    ...(places.length === 0 ? [element('p', {}, 'No run has a finite peak sensitivity.')] : []),
  );
  const [low, high] = sensitivity;
  const unit = result.figure === 'settling time' ? 's' : 'm';
  return element(
    'figure',
    { class: 'trade' },
    element(
      'p',
      { class: 'trade-up' },
      `${result.figure}, 0 to ${ranged(highest, unit)}; runs that did not settle lie at the top`,
    ),
    plot,
    element(
      'figcaption',
      {},
      `Peak sensitivity from ${inUnit(low, '', 3)} (robust) to ${inUnit(high, '', 3)} (lively). `,
      'Circles are pretuned, squares textbook, the diamond is the present tuning; ',
      'larger ones draw more current. Press one to make it live.',
      ...(missing > 0 ? [` Not shown: ${missing} without a finite peak sensitivity.`] : []),
    ),
  );
}

import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { axes } from '../../plot/axes.ts';
import { type Drawing, drawing } from '../../plot/drawing.ts';
import { rightOf, type Size } from '../../plot/frame.ts';
import { label, line } from '../../plot/marks.ts';
import { rangeOf } from '../../plot/range.ts';
import { linearScale, type Scale } from '../../plot/scale.ts';
import { svg } from '../../plot/svg.ts';
import { button, element } from '../../ui/dom.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { judgedFigure, pointText, tradeOffText } from './pretuneText.ts';

/** Smallest and largest diameter of a point, rem: it grows with the current. */
const DIAMETER = [0.75, 1.375] as const;
const SIZE: Size = { width: 760, height: 300 };
/** Room on either side of the points, as a share of the range; above them, for what did not settle or tripped. */
const MARGIN = 0.06;
const SHELF = 0.25;

/** Where a simulated run lies in the chart. */
interface TradeOffPlace {
  readonly point: TuningPoint;
  /** Shares of the width from the left and of the height from the top. */
  readonly x: number;
  readonly y: number;
  /** Diameter, rem. */
  readonly size: number;
}

/** All runs whose peak sensitivity is finite, over axes with numbers. */
interface TradeOff {
  readonly places: readonly TradeOffPlace[];
  readonly axes: Drawing;
  /** How many runs have no finite peak sensitivity. */
  readonly missing: number;
}

/**
 * Peak sensitivity to the right, what is judged upwards, RMS current as size; what did not settle
 * lies on a shelf at the top.
 */
export function tradeOffOf(result: PretuneResult): TradeOff {
  const points = result.points.filter((point) => Number.isFinite(point.peakSensitivity));
  const values = points.map((point) => (point.trip ? null : judgedFigure(result, point)));
  const [low, high] = rangeOf(points.map((point) => point.peakSensitivity));
  const margin = MARGIN * (high - low) || MARGIN * high;
  const settles = result.figure === 'settling time';
  const [, highest] = rangeOf(
    [0],
    values.filter((value) => value !== null && Number.isFinite(value)) as number[],
  );
  const top = highest > 0 ? highest : settles ? 1e-3 : 1e-9;
  const unsettled = values.some((value) => value === null);
  const shelf = (1 + (unsettled ? SHELF : MARGIN)) * top;
  const made = axes(
    SIZE,
    { title: 'Peak sensitivity', unit: '', from: low - margin, to: high + margin },
    {
      title: settles ? 'Settling time' : 'Following error, RMS',
      unit: settles ? 's' : 'm',
      from: -MARGIN * top,
      to: shelf,
    },
    20,
  );
  const height = (value: number | null) => (value === null ? (top + shelf) / 2 : value);
  const diameter = shares(rangeOf(points.map((point) => point.rmsCurrent)), DIAMETER);
  const places = points.map((point, k) => ({
    point,
    x: made.x.at(point.peakSensitivity) / SIZE.width,
    y: made.y.at(height(values[k] ?? null)) / SIZE.height,
    size: Number.isFinite(point.rmsCurrent) ? diameter.at(point.rmsCurrent) : DIAMETER[0],
  }));
  const edge = made.y.at(top * (1 + MARGIN));
  const shelfMarks = unsettled
    ? [
        line(made.frame.left, edge, rightOf(made.frame), edge, { dash: 'dotted' }),
        label(rightOf(made.frame) - 6, edge - 12, 'not settled or tripped', { align: 'end', halo: true }),
      ]
    : [];
  const description = `Trade-off of ${points.length} simulated runs: ${result.figure} over peak sensitivity`;
  return {
    places,
    axes: drawing(SIZE, description, [...made.marks, ...shelfMarks]),
    missing: result.points.length - points.length,
  };
}

/** The middle of the places where all values are the same. */
function shares([low, high]: readonly [number, number], [start, end]: readonly [number, number]): Scale {
  return high > low ? linearScale(low, high, start, end) : linearScale(low - 1, low + 1, start, end);
}

/** Every point is a simulated run, and a button that makes its tuning live. */
export function createTradeOff(result: PretuneResult, onChoose: (point: TuningPoint) => void): HTMLElement {
  const { places, axes, missing } = tradeOffOf(result);
  const words = tradeOffText(result);
  const plot = element('div', { class: 'trade-plot', role: 'group', 'aria-label': 'Trade-off' });
  plot.innerHTML = svg(axes).text;
  plot.append(
    ...places.map(({ point, x, y, size }) => {
      const mark = button('', () => onChoose(point), {
        class: `trade-point is-${point.origin.replaceAll(' ', '-')}`,
        title: `${pointText(result, point)}. Press to make it live.`,
        'aria-label': pointText(result, point),
      });
      mark.style.left = `${100 * x}%`;
      mark.style.top = `${100 * y}%`;
      mark.style.setProperty('--size', `${size}rem`);
      return mark;
    }),
  );
  return element(
    'figure',
    { class: 'trade' },
    places.length === 0 ? element('p', {}, 'No run has a finite peak sensitivity.') : plot,
    element(
      'figcaption',
      {},
      'Circles are pretuned, squares textbook, the diamond is the present tuning; ',
      'larger marks draw more current. Robust loops are on the left. Press a mark to make it live.',
      ...(missing > 0 ? [` Not shown: ${missing} without a finite peak sensitivity.`] : []),
    ),
    ...(words ? [element('p', {}, unbroken(words))] : []),
  );
}

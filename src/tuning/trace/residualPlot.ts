import { ranged } from '../../../shared/core/format.ts';
import type { ForceResidual } from '../../../shared/protocol/fit.ts';
import { element } from '../../ui/dom.ts';

const SVG = 'http://www.w3.org/2000/svg';
const WIDTH = 900;
const PLOTS = [
  { top: 8, height: 150 },
  { top: 178, height: 110 },
] as const;
const HEIGHT = 300;

/** Force of the measured current with that of the fitted model above, and what is left below; windows that were not fitted are open. */
export function createResidualPlot(forces: ForceResidual): HTMLElement {
  const { time, measured, model, residual, used } = forces;
  const svg = document.createElementNS(SVG, 'svg');
  svg.setAttribute('viewBox', `0 0 ${WIDTH} ${HEIGHT}`);
  svg.setAttribute('role', 'img');
  const fitted = residual.filter((_, k) => used[k] === 1);
  const left = largest(fitted.length > 0 ? fitted : residual);
  const force = Math.max(largest(measured), largest(model));
  svg.setAttribute('aria-label', `Forces to ${ranged(force, 'N')}, residual to ${ranged(left, 'N')}`);
  const x = (k: number) => (WIDTH * (time[k]! - time[0]!)) / Math.max(time.at(-1)! - time[0]!, 1e-9);
  const line = (values: Float64Array, plot: 0 | 1, scale: number, name: string) => {
    const { top, height } = PLOTS[plot];
    const places = Array.from(
      values,
      (value, k) => `${x(k).toFixed(1)},${(top + height / 2 - (value / scale) * (height / 2)).toFixed(1)}`,
    );
    add(svg, 'polyline', { points: places.join(' '), class: name });
  };
  for (const { top, height } of PLOTS)
    add(svg, 'line', { x1: 0, x2: WIDTH, y1: top + height / 2, y2: top + height / 2, class: 'zero' });
  line(measured, 0, force, 'measured');
  line(model, 0, force, 'model');
  residual.forEach((value, k) => {
    const { top, height } = PLOTS[1];
    const y = top + height / 2 - Math.max(Math.min(value / left, 1), -1) * (height / 2);
    add(svg, 'circle', { cx: x(k), cy: y, r: 2.5, class: used[k] ? 'used' : 'unused' });
  });
  return element(
    'figure',
    { class: 'residual' },
    svg,
    element(
      'figcaption',
      {},
      `Above: force of the measured current (solid) and of the fitted model (dashed), to ±${ranged(force, 'N')}. `,
      `Below: what is left, to ±${ranged(left, 'N')}; open circles were not fitted: the table stands or turns round there.`,
    ),
  );
}

function largest(values: Float64Array): number {
  let max = 1e-9;
  for (const value of values) if (Number.isFinite(value)) max = Math.max(max, Math.abs(value));
  return max;
}

function add(svg: SVGElement, tag: string, attributes: Readonly<Record<string, string | number>>): void {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value));
  svg.append(made);
}

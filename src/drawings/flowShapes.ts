import type { Frame } from '../plot/frame.ts';
import type { Mark, Shape } from '../plot/marks.ts';
import type { Fill } from '../plot/pens.ts';
import type { Branch } from './energyBranches.ts';

const OPACITY = 0.55;

type Place = readonly [x: number, y: number];

/**
 * A band of one width, px, that swings from one height to another; both places are on its upper
 * edge.
 */
export function flowBand(
  { name, energy, colour }: Branch,
  width: number,
  [x1, y1]: Place,
  [x2, y2]: Place,
): Mark {
  const half = (x1 + x2) / 2;
  const [foot1, foot2] = [y1 + width, y2 + width];
  const there = written`M${x1} ${y1}C${half} ${y1} ${half} ${y2} ${x2} ${y2}`;
  const back = written`V${foot2}C${half} ${foot2} ${half} ${foot1} ${x1} ${foot1}Z`;
  const top = Math.min(y1, y2);
  const box = { left: x1, top, width: x2 - x1, height: Math.max(y1, y2) + width - top };
  return shape(name, energy, there + back, box, { colour, opacity: OPACITY });
}

interface Turn {
  /** Where the band leaves: its right edge, and its lower edge. */
  readonly x: number;
  readonly foot: number;
  /** Where it points to. */
  readonly left: number;
  /** Inner radius. */
  readonly turn: number;
}

/** A band of one width, px, that turns round below where it leaves, and ends in an arrow. */
export function turnBack(energy: number, width: number, { x, foot, left, turn }: Turn): Mark[] {
  const outer = turn + width;
  const top = foot - width;
  const arrow = left + 12;
  const fill = { colour: 'energy', opacity: OPACITY } as const;
  const round = written`M${x} ${top}A${outer} ${outer} 0 0 1 ${x} ${top + 2 * outer}H${arrow}`;
  const back = written`V${foot + 2 * turn}H${x}A${turn} ${turn} 0 0 0 ${x} ${foot}Z`;
  const middle = foot + 2 * turn + width / 2;
  const tip = Math.max(width / 2 + 4, 6);
  const head = written`M${arrow} ${middle - tip}L${left} ${middle}L${arrow} ${middle + tip}Z`;
  return [
    shape(
      'returned',
      energy,
      round + back,
      { left: arrow, top, width: x + outer - arrow, height: 2 * outer },
      fill,
    ),
    shape('returned', energy, head, { left, top: middle - tip, width: arrow - left, height: 2 * tip }, fill),
  ];
}

function shape(name: string, value: number, path: string, box: Frame, fill: Fill): Shape {
  return { kind: 'shape', name, value, path, box, fill };
}

/** A path with its numbers to a hundredth of a pixel. */
function written(strings: TemplateStringsArray, ...numbers: readonly number[]): string {
  return String.raw({ raw: strings }, ...numbers.map((value) => Math.round(value * 100) / 100 + 0));
}

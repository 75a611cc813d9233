import { type Markup, markup } from '../../ui/markup.ts';
import { type Frame, labelWidth, line, textAt } from './plot.ts';

/** What is written at the end of a curve, and the height at which the curve ends. */
export interface EndLabel {
  readonly text: string;
  readonly y: number;
}

/** Least distance of two labels, px. */
const LINE = 17;
const LEADER = 14;

/** Room that labels need to the right of a frame. */
export function endLabelRoom(text: readonly string[]): number {
  return LEADER + 8 + Math.max(0, ...text.map(labelWidth));
}

/** Labels to the right of a frame, each as near to the end of its curve as the others let it be, and a line to it. */
export function endLabels({ left, top, width, height }: Frame, labels: readonly EndLabel[]): Markup {
  const inside = labels.map(({ text, y }) => ({ text, y: Math.min(Math.max(y, top), top + height) }));
  const sorted = inside.sort((a, b) => a.y - b.y);
  const places = spread(
    sorted.map(({ y }) => y),
    top + 6,
    top + height,
  );
  const side = left + width;
  return markup`${sorted.map(
    ({ text, y }, k) =>
      markup`${line(side, y, side + LEADER, places[k]!, { opacity: 0.6 })}${textAt(side + LEADER + 4, places[k]! + 5, text)}`,
  )}`;
}

/** Ascending places at least a line apart, between two bounds, moved as little as may be; past the lower bound where there is no room. */
export function spread(wanted: readonly number[], lowest: number, highest: number): number[] {
  const places = [...wanted];
  let limit = highest;
  for (let k = places.length - 1; k >= 0; k--) {
    places[k] = Math.min(places[k]!, limit);
    limit = places[k]! - LINE;
  }
  limit = lowest;
  for (let k = 0; k < places.length; k++) {
    places[k] = Math.max(places[k]!, limit);
    limit = places[k]! + LINE;
  }
  return places;
}

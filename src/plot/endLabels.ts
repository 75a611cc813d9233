import { at } from '../../shared/core/at.ts';
import { type Frame, footOf, rightOf } from './frame.ts';
import { label, labelWidth, line, type Mark } from './marks.ts';

/** What is written at the end of a curve, and the height at which the curve ends. */
interface EndLabel {
  readonly text: string;
  readonly y: number;
}

/** Smallest distance of two labels, px. */
const LINE = 17;
const LEADER = 14;

/** Room that labels need to the right of a frame. */
export function endLabelRoom(texts: readonly string[]): number {
  return LEADER + 8 + Math.max(0, ...texts.map((text) => labelWidth(text)));
}

/**
 * Labels to the right of a frame, each as near to the end of its curve as the others let it be, and
 * a line to it.
 */
export function endLabels(frame: Frame, labels: readonly EndLabel[]): Mark[] {
  const sorted = labels
    .filter(({ y }) => Number.isFinite(y))
    .map(({ text, y }) => ({ text, y: Math.min(Math.max(y, frame.top), footOf(frame)) }))
    .sort((a, b) => a.y - b.y);
  const places = spread(
    sorted.map(({ y }) => y),
    frame.top + 6,
    footOf(frame),
  );
  const side = rightOf(frame);
  return sorted.flatMap(({ text, y }, k) => {
    const place = at(places, k);
    return [line(side, y, side + LEADER, place, { colour: 'strong' }), label(side + LEADER + 4, place, text)];
  });
}

/**
 * Ascending places at least a line apart, between two bounds, moved as little as may be; past the
 * lower bound where there is no room.
 */
export function spread(wanted: readonly number[], lowest: number, highest: number): number[] {
  const fromBelow: number[] = [];
  let limit = highest;
  for (const place of [...wanted].reverse()) {
    const kept = Math.min(place, limit);
    fromBelow.push(kept);
    limit = kept - LINE;
  }
  limit = lowest;
  return fromBelow.reverse().map((place) => {
    const kept = Math.max(place, limit);
    limit = kept + LINE;
    return kept;
  });
}

import { type Frame, footOf, rightOf } from './frame.ts';
import { type Curve, label, type Mark, type Point, type Shape, TEXT_SIZE } from './marks.ts';

type ValueMark = Curve | Point | Shape;

/**
 * Marks cut off at a frame. Where values are not finite, or none can be seen, it says so: an empty
 * chart would look like one of a quantity that is zero.
 */
export function inside(frame: Frame, marks: readonly Mark[], textSize = TEXT_SIZE): Mark[] {
  const text = remarkOn(frame, marks);
  const clip: Mark = { kind: 'clip', frame, marks };
  return text === null ? [clip] : [clip, remark(frame, text, textSize)];
}

/** A sentence about the values, on the foot of a frame. */
function remark(frame: Frame, text: string, textSize = TEXT_SIZE): Mark {
  return label(frame.left + frame.width / 2, footOf(frame) - 0.9 * textSize, text, {
    align: 'middle',
    colour: 'alarm',
    halo: true,
    isRemark: true,
  });
}

/** What a person has to know about the values of a chart; null where all is well. */
function remarkOn(frame: Frame, marks: readonly Mark[]): string | null {
  const values = marks.filter(isValue);
  const count = values.reduce((sum, mark) => sum + countOf(mark), 0);
  const missing = values.reduce((sum, mark) => sum + missingOf(mark), 0);
  if (count === 0) return 'No values to draw';
  if (missing === count) return count === 1 ? 'The value is not finite' : `None of ${count} values is finite`;
  if (missing > 0) return missing === 1 ? '1 value is not finite' : `${missing} values are not finite`;
  return values.some((mark) => canBeSeen(mark, frame)) ? null : 'No value lies within the axes';
}

function isValue(mark: Mark): mark is ValueMark {
  return mark.kind === 'curve' || mark.kind === 'point' || mark.kind === 'shape';
}

function countOf(mark: ValueMark): number {
  return mark.kind === 'curve' ? mark.count : 1;
}

function missingOf(mark: ValueMark): number {
  switch (mark.kind) {
    case 'curve':
      return mark.missing;
    case 'point':
      return Number.isFinite(mark.x + mark.y) ? 0 : 1;
    case 'shape':
      return Number.isFinite(mark.value) ? 0 : 1;
  }
}

/** Whether any part of a mark lies in a frame. */
export function canBeSeen(mark: ValueMark, frame: Frame): boolean {
  switch (mark.kind) {
    case 'curve':
      return mark.runs.some((run) => runCanBeSeen(run, frame));
    case 'point':
      return meets(frame, mark.x, mark.y, mark.x, mark.y);
    case 'shape': {
      const { box } = mark;
      return meets(frame, box.left, box.top, rightOf(box), footOf(box));
    }
  }
}

/** A line may cross the frame between two points that lie outside. */
function runCanBeSeen(run: readonly number[], frame: Frame): boolean {
  let [fromX = Number.NaN, fromY = Number.NaN] = run;
  for (let k = 0; k + 1 < run.length; k += 2) {
    const [x = Number.NaN, y = Number.NaN] = [run[k], run[k + 1]];
    if (meets(frame, Math.min(fromX, x), Math.min(fromY, y), Math.max(fromX, x), Math.max(fromY, y)))
      return true;
    [fromX, fromY] = [x, y];
  }
  return false;
}

function meets(frame: Frame, left: number, top: number, right: number, foot: number): boolean {
  return left <= rightOf(frame) && right >= frame.left && top <= footOf(frame) && foot >= frame.top;
}

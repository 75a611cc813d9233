import { type Frame, footOf, NO_FRAME, rightOf } from '../frame.ts';
import { area, label, labelWidth, line, type Mark } from '../marks.ts';
import { logScale, type Scale } from '../scale.ts';
import { type FrequencyAxis, tickText } from './frequencyAxis.ts';
import type { LevelScale } from './levelScale.ts';

/** One plot over frequency: a frame, the shared frequency axis, and a vertical scale of its own. */
export class Graph {
  frame: Frame = NO_FRAME;
  readonly axis: FrequencyAxis;
  readonly levels: LevelScale;

  constructor(axis: FrequencyAxis, levels: LevelScale) {
    this.axis = axis;
    this.levels = levels;
  }

  /** From Hz to pixels. */
  get x(): Scale {
    return logScale(this.axis.from, this.axis.to, this.frame.left, rightOf(this.frame));
  }

  /** From levels to pixels. */
  get y(): Scale {
    return this.levels.scale(footOf(this.frame), this.frame.top);
  }
}

/** What lies below the curves of a graph; `reference` is a level that means something. */
export function graphGround({ frame, axis, levels, x, y }: Graph, reference: number | null): Mark[] {
  const { left, top } = frame;
  return [
    area(frame, { colour: 'ground' }),
    ...axis.ticks().map(({ value, digit }) =>
      line(x.at(value), top, x.at(value), footOf(frame), {
        colour: 'line',
        opacity: digit === 1 ? 1 : 0.45,
      }),
    ),
    ...levels.ticks().map((level) =>
      line(left, y.at(level), rightOf(frame), y.at(level), {
        colour: level === reference ? 'strong' : 'line',
      }),
    ),
  ];
}

/** Levels beside the frame; where there is no room for all, the reference comes first. */
export function levelLabels(
  { frame, levels, y }: Graph,
  reference: number | null,
  textOf: (level: number) => string,
  textSize: number,
): Mark[] {
  const half = textSize * 0.55;
  const taken: number[] = [];
  const ticks = levels.ticks().reverse();
  return [...ticks.filter((each) => each === reference), ...ticks].flatMap((level) => {
    const place = Math.min(Math.max(y.at(level), frame.top + half), footOf(frame) - half);
    if (taken.some((other) => Math.abs(other - place) < textSize)) return [];
    taken.push(place);
    return [label(frame.left - 5, place, textOf(level), { align: 'end', colour: 'soft' })];
  });
}

/** Frequencies below the frame; 2 and 5 too where they have room. */
export function frequencyLabels({ frame, axis, x }: Graph, textSize: number): Mark[] {
  const middle = footOf(frame) + textSize * 0.75;
  const marks = [label(rightOf(frame), middle, 'Hz', { align: 'end', colour: 'soft' })];
  const last = rightOf(frame) - textSize * 1.6;
  const decade = frame.width / Math.log10(axis.to / axis.from);
  const wanted = decade > textSize * 9 ? [1, 2, 5] : [1];
  let end = frame.left - textSize;
  for (const { value, digit } of axis.ticks()) {
    if (!wanted.includes(digit)) continue;
    const text = tickText(value);
    const half = labelWidth(text, textSize) / 2;
    const place = x.at(value);
    if (place - half < end + 4 || place + half > last) continue;
    marks.push(label(place, middle, text, { align: 'middle', colour: 'soft' }));
    end = place + half;
  }
  return marks;
}

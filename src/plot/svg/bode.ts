import { decibels } from '../../../shared/core/decibels.ts';
import { loopFigureText } from '../../../shared/figures/loopFigures.ts';
import type { LoopAnalysis, LoopFigures, Response } from '../../../shared/protocol/analysis.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import {
  border,
  clipped,
  curve,
  dot,
  drawing,
  type Frame,
  labelOnWhite,
  line,
  linearScale,
  logScale,
  type Scale,
  type Style,
  textAt,
} from './plot.ts';

const WIDTH = 680;
const HEIGHT = 512;
const LEFT = 58;
const RIGHT = 12;
const PANELS = {
  gain: { left: LEFT, top: 8, width: WIDTH - LEFT - RIGHT, height: 155 },
  phase: { left: LEFT, top: 185, width: WIDTH - LEFT - RIGHT, height: 145 },
  closed: { left: LEFT, top: 352, width: WIDTH - LEFT - RIGHT, height: 110 },
} as const satisfies Record<string, Frame>;

/** dB and degrees that are drawn at most; further out the loop matters to nobody. */
const GAIN_STEP = 40;
const LOWEST_GAIN = -80;
const HIGHEST_GAIN = 120;
const LOWEST_PHASE = -540;
const CLOSED_RANGE = [-40, 20] as const;

const degrees = (radians: number) => (radians * 180) / Math.PI;

/** Open loop in magnitude and phase with its margins, and sensitivity and closed loop, over one frequency scale. */
export function bodePlot(analysis: LoopAnalysis): Markup {
  const { frequency, openLoop, sensitivity, closedLoop, figures } = analysis;
  const f = logScale(frequency[0]!, frequency.at(-1)!, LEFT, WIDTH - RIGHT);
  const gain = panel(
    'gain',
    [{ response: openLoop, of: decibelsAt, style: 'curve' }],
    gainRange(openLoop),
    GAIN_STEP,
    f,
    frequency,
  );
  const phase = panel(
    'phase',
    [{ response: openLoop, of: degreesAt, style: 'curve' }],
    phaseRange(openLoop),
    90,
    f,
    frequency,
  );
  const closed = panel(
    'closed',
    [
      { response: sensitivity, of: decibelsAt, style: 'curve' },
      { response: closedLoop, of: decibelsAt, style: 'dashed' },
    ],
    CLOSED_RANGE,
    20,
    f,
    frequency,
  );
  return drawing(
    { width: WIDTH, height: HEIGHT },
    summary(figures),
    markup`${gain.drawn}${phase.drawn}${closed.drawn}
${frequencyAxis(f)}
${marginMarks(analysis, f, gain.scale, phase.scale)}
${labelOnWhite(LEFT + 8, PANELS.gain.top + PANELS.gain.height - 10, `|L| in dB; bar: gain margin ${loopFigureText('gainMargin', figures)}`)}
${labelOnWhite(LEFT + 8, PANELS.phase.top + PANELS.phase.height - 10, `phase of L in degrees; bar: phase margin ${loopFigureText('phaseMargin', figures)}`)}
${labelOnWhite(LEFT + 8, PANELS.closed.top + 18, '|S| solid, |T| dashed, in dB')}`,
  );
}

interface Curve {
  readonly response: Response;
  readonly of: (response: Response, k: number) => number;
  readonly style: Style;
}

const decibelsAt = ({ magnitude }: Response, k: number) => decibels(magnitude[k]!);
const degreesAt = ({ phase }: Response, k: number) => degrees(phase[k]!);

function panel(
  name: keyof typeof PANELS,
  curves: readonly Curve[],
  [from, to]: readonly [number, number],
  step: number,
  f: Scale,
  frequency: Float64Array,
): { readonly drawn: Markup; readonly scale: Scale } {
  const frame = PANELS[name];
  const scale = linearScale(from, to, frame.top + frame.height, frame.top);
  const levels = Math.round((to - from) / step) + 1;
  const grid = Array.from({ length: levels }, (_, k) => from + k * step);
  const drawn = markup`${decades(f).map((decade) => line(f.at(decade), frame.top, f.at(decade), frame.top + frame.height, 'grid'))}
${grid.map((level) => line(LEFT, scale.at(level), WIDTH - RIGHT, scale.at(level), isReference(name, level) ? 'reference' : 'grid'))}
${grid.map((level) => textAt(LEFT - 6, scale.at(level) + 5, String(level).replace('-', '−'), 'end'))}
${clipped(
  frame,
  curves.map(({ response, of, style }) =>
    curve(
      frequency.length,
      (k) => f.at(frequency[k]!),
      (k) => scale.at(of(response, k)),
      style,
    ),
  ),
)}
${border(frame)}`;
  return { drawn, scale };
}

function isReference(name: keyof typeof PANELS, level: number): boolean {
  return name === 'phase' ? (level + 180) % 360 === 0 : level === 0;
}

function decades({ from, to }: Scale): number[] {
  const found: number[] = [];
  for (let power = Math.ceil(Math.log10(from) - 1e-9); 10 ** power <= to; power++) found.push(10 ** power);
  return found;
}

function frequencyAxis(f: Scale): Markup {
  const { top, height } = PANELS.closed;
  const names = decades(f).map((decade) =>
    textAt(f.at(decade), top + height + 18, decade >= 1000 ? `${decade / 1000}k` : String(decade), 'middle'),
  );
  return markup`${names}${textAt((LEFT + WIDTH - RIGHT) / 2, HEIGHT - 8, 'Frequency in Hz', 'middle')}`;
}

/** Phase margin and gain margin as bars between the curve and what it must not reach. */
function marginMarks(
  { figures, frequency, openLoop }: LoopAnalysis,
  f: Scale,
  gain: Scale,
  phase: Scale,
): Markup {
  const { phaseMargin, gainMargin } = figures;
  const marks: Markup[] = [];
  if (phaseMargin) {
    const x = f.at(phaseMargin.frequency);
    const margin = degrees(phaseMargin.value);
    // The curve may run on another turn of the circle.
    const found = frequency.findIndex((each) => each >= phaseMargin.frequency);
    const turns = Math.round((degrees(openLoop.phase.at(found)!) + 180 - margin) / 360);
    const edge = -180 + 360 * turns;
    marks.push(
      line(x, PANELS.gain.top, x, PANELS.phase.top + PANELS.phase.height, 'reference'),
      dot(x, gain.at(0)),
      line(x, phase.at(edge), x, phase.at(edge + margin), 'marker'),
    );
  }
  if (gainMargin) {
    const x = f.at(gainMargin.frequency);
    const margin = decibels(gainMargin.value);
    marks.push(line(x, gain.at(0), x, gain.at(-margin), 'marker'));
  }
  return markup`${marks}`;
}

function gainRange({ magnitude }: Response): readonly [number, number] {
  const [lowest, highest] = extremes(magnitude);
  const from = Math.max(GAIN_STEP * Math.floor(decibels(lowest) / GAIN_STEP), LOWEST_GAIN);
  const to = Math.min(GAIN_STEP * Math.ceil(decibels(highest) / GAIN_STEP), HIGHEST_GAIN);
  return [Math.min(from, -GAIN_STEP), Math.max(to, GAIN_STEP)];
}

function phaseRange({ phase }: Response): readonly [number, number] {
  const [lowest, highest] = extremes(phase);
  const from = Math.max(90 * Math.floor(degrees(lowest) / 90), LOWEST_PHASE);
  return [Math.min(from, -270), Math.max(90 * Math.ceil(degrees(highest) / 90), -90)];
}

function extremes(values: Float64Array): readonly [number, number] {
  let [lowest, highest] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    lowest = Math.min(lowest, value);
    highest = Math.max(highest, value);
  }
  return [lowest, highest];
}

function summary(figures: LoopFigures): string {
  return `Frequency response of the loop. Phase margin ${loopFigureText('phaseMargin', figures)}, gain margin ${loopFigureText('gainMargin', figures)}.`;
}

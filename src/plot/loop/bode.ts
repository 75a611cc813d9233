import { valueAt } from '../../../shared/core/at.ts';
import { decibels } from '../../../shared/core/decibels.ts';
import type { Response } from '../../../shared/protocol/analysis.ts';
import { contains, footOf } from '../frame.ts';
import { inside } from '../inside.ts';
import { placeOn, power, straight } from '../interpolate.ts';
import { curve, label, line, type Mark, point } from '../marks.ts';
import type { FrequencyAxis } from './frequencyAxis.ts';
import { Graph, graphGround, levelLabels } from './graph.ts';
import { LevelScale } from './levelScale.ts';
import { FAINT, type LoopChartData, STALE } from './loopData.ts';
import { gainMarginMarks, phaseMarginMarks } from './margins.ts';
import { BODE, type BodeName, type BodeSpec, degrees, degreesText } from './responses.ts';

/** Coherence below this is told from a good one: less than nine tenths of the answer repeats. */
const GOOD_COHERENCE = 0.9;
/** Points closer than this, px, are drawn smaller. */
const DENSE = 7;
/** The level of phase that is drawn stronger. */
const REVERSED = -180;

type Levels = (response: Response) => Float64Array;

/**
 * Magnitude and phase of some responses over one frequency axis, and the coherence of what was
 * measured.
 */
export class BodeChart {
  readonly spec: BodeSpec;
  readonly magnitude: Graph;
  readonly phase: Graph;
  readonly coherence: Graph;

  constructor(name: BodeName, axis: FrequencyAxis) {
    this.spec = BODE[name];
    this.magnitude = new Graph(axis, new LevelScale(this.spec.magnitude.limits));
    this.phase = new Graph(axis, new LevelScale(this.spec.phase));
    this.coherence = new Graph(axis, new LevelScale({ steps: [0.25, 1], min: [0, 1.25], max: [0, 1.25] }));
  }

  /** Fits the vertical scales to every curve in view. */
  fit(data: LoopChartData, textSize: number): void {
    for (const [graph, levels] of [
      [this.magnitude, this.#magnitudes],
      [this.phase, phases],
    ] as const) {
      const [low, high] = this.#rangeInView(data, levels);
      graph.levels.fit(low, high, graph.frame.height, textSize);
    }
  }

  magnitudeMarks(data: LoopChartData, textSize: number): Mark[] {
    const { isShaped, magnitude } = this.spec;
    const graph = this.magnitude;
    const { left, top } = graph.frame;
    return [
      ...graphGround(graph, magnitude.reference),
      ...inside(
        graph.frame,
        [
          ...(isShaped ? filterMarks(graph, data) : []),
          ...this.#responseMarks(graph, data, this.#magnitudes),
          ...(isShaped ? gainMarginMarks(graph, data.analysis, textSize) : []),
        ],
        textSize,
      ),
      ...levelLabels(graph, magnitude.reference, magnitude.textOf, textSize),
      label(left + 5, top + textSize * 0.8, magnitude.unit, { colour: 'soft', halo: true }),
    ];
  }

  phaseMarks(data: LoopChartData, textSize: number): Mark[] {
    const graph = this.phase;
    const margin = this.spec.isShaped ? phaseMarginMarks(graph, data.analysis) : [];
    return [
      ...graphGround(graph, REVERSED),
      ...inside(graph.frame, [...this.#responseMarks(graph, data, phases), ...margin], textSize),
      ...levelLabels(graph, REVERSED, degreesText, textSize),
    ];
  }

  coherenceMarks({ measured, isStale }: LoopChartData, textSize: number): Mark[] {
    if (!measured) return [];
    const graph = this.coherence;
    const { left, top, height } = graph.frame;
    const pen = { width: 1.5, opacity: isStale ? STALE : 1 };
    return [
      ...graphGround(graph, null),
      ...inside(graph.frame, [curve(measured.frequency, measured.coherence, graph, pen)], textSize),
      ...levelLabels(graph, 1, String, textSize),
      label(left + 5, top + height / 2, isStale ? 'coherence, outdated' : 'coherence', {
        colour: 'soft',
        halo: true,
      }),
    ];
  }

  /** A hair line with a ring on every response. */
  cursorMarks({ analysis, cursor }: LoopChartData): Mark[] {
    if (cursor === null) return [];
    const place = placeOn(analysis.frequency, cursor);
    const readings = [
      [this.magnitude, ({ magnitude }: Response) => this.spec.magnitude.levelOf(power(magnitude, place))],
      [this.phase, ({ phase }: Response) => degrees(straight(phase, place))],
    ] as const;
    return readings.flatMap(([graph, levelOf]) => {
      const { frame } = graph;
      const x = graph.x.at(cursor);
      if (!contains(frame, x, frame.top)) return [];
      const rings = this.spec.responses.map(({ of, pen: { colour = 'ink' } }) =>
        point(x, graph.y.at(levelOf(of(analysis))), 'ring', 3.5, { colour, width: 1.5 }),
      );
      return [line(x, frame.top, x, footOf(frame)), { kind: 'clip', frame, marks: rings }];
    });
  }

  readonly #magnitudes: Levels = ({ magnitude }) =>
    magnitude.map((value) => this.spec.magnitude.levelOf(value));

  #rangeInView({ analysis, pinned }: LoopChartData, levels: Levels): readonly [number, number] {
    const { from, to } = this.magnitude.axis;
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    for (const shown of pinned ? [analysis, pinned] : [analysis]) {
      for (const { of } of this.spec.responses) {
        for (const [k, level] of levels(of(shown)).entries()) {
          const frequency = valueAt(shown.frequency, k);
          if (frequency < from || frequency > to || !Number.isFinite(level)) continue;
          low = Math.min(low, level);
          high = Math.max(high, level);
        }
      }
    }
    return [low, high];
  }

  #responseMarks(graph: Graph, data: LoopChartData, levels: Levels): Mark[] {
    const { analysis, pinned, measured, isStale } = data;
    const curves = this.spec.responses.flatMap(({ of, pen }) => [
      ...(pinned
        ? [curve(pinned.frequency, levels(of(pinned)), graph, { ...pen, width: 1.25, opacity: FAINT })]
        : []),
      curve(analysis.frequency, levels(of(analysis)), graph, pen),
    ]);
    if (!measured) return curves;
    const { x, y } = graph;
    const isDense = graph.frame.width / measured.frequency.length < DENSE;
    const rings = this.spec.responses.flatMap((response): Mark[] => {
      const found = response.measured?.(measured);
      if (!found) return [];
      const { colour = 'ink' } = response.pen;
      return Array.from(levels(found), (level, k) => {
        const isGood = valueAt(measured.coherence, k) >= GOOD_COHERENCE;
        const opacity = isStale ? STALE : isGood ? 1 : 0.6;
        const radius = isGood && !isDense ? 3 : 2;
        const place = x.at(valueAt(measured.frequency, k));
        return point(place, y.at(level), 'ring', radius, { colour, opacity, width: 1.5 });
      });
    });
    return [...curves, ...rings];
  }
}

const phases: Levels = ({ phase }) => phase.map(degrees);

function filterMarks(graph: Graph, { analysis, filters }: LoopChartData): Mark[] {
  return filters.map((gain) =>
    curve(
      analysis.frequency,
      analysis.frequency.map((frequency) => decibels(gain(frequency))),
      graph,
      { colour: 'accent', dash: 'dashDot' },
    ),
  );
}

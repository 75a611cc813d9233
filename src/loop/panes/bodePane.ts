import { decibels } from '../../../shared/core/decibels.ts';
import { inUnit } from '../../../shared/core/format.ts';
import type { LoopAnalysis, Response } from '../../../shared/protocol/analysis.ts';
import { Canvas } from '../../plot/canvas/canvas.ts';
import type { Theme } from '../../plot/canvas/theme.ts';
import { placeOn, power, straight } from '../../plot/interpolate.ts';
import type { FrequencyAxis } from '../../plot/loop/frequencyAxis.ts';
import { drawLabel, Graph } from '../../plot/loop/graph.ts';
import { LevelScale } from '../../plot/loop/levelScale.ts';
import {
  BODE,
  type BodeName,
  type BodeSpec,
  type CurveSpec,
  colourOf,
  degrees,
} from '../../plot/loop/responses.ts';
import { element } from '../../ui/dom.ts';
import { FILTER_NAMES, filterGain } from '../handles/filterGain.ts';
import type { LoopData } from './loopData.ts';
import type { Pane } from './pane.ts';

type Context = CanvasRenderingContext2D;

/** Shares of the height: magnitude, and phase below it. */
const MAGNITUDE_SHARE = 0.62;
/** Coherence below this is told from a good one: less than nine tenths of the answer repeats. */
const GOOD_COHERENCE = 0.9;
/** Points closer than this, CSS pixels, are drawn smaller. */
const DENSE = 7;
/** Room for labels beside and below, as a multiple of the text size; between the plots, CSS pixels. */
const GUTTER = 3.4;
const FOOT = 1.5;
const GAP = 6;
/** Height of the coherence strip, as a multiple of the text size. */
const STRIP = 1.5;

/** Magnitude over phase over one frequency axis, with the pinned and the measured loop beside the present one. */
export class BodePane implements Pane {
  readonly title: string;
  readonly element = element('div', { class: 'loop-pane' });
  readonly magnitude: Graph;
  readonly #phase: Graph;
  readonly #coherence: Graph;
  readonly #spec: BodeSpec;
  readonly #canvas = new Canvas();
  #width = 0;
  #height = 0;

  constructor(
    readonly name: BodeName,
    axis: FrequencyAxis,
  ) {
    this.#spec = BODE[name];
    this.title = this.#spec.title;
    this.magnitude = new Graph(axis, new LevelScale(this.#spec.magnitude.limits));
    this.#phase = new Graph(axis, new LevelScale(this.#spec.phase));
    this.#coherence = new Graph(axis, new LevelScale({ steps: [0.25, 1], min: [0, 1.25], max: [0, 1.25] }));
    this.element.append(this.#canvas.element);
  }

  get legend(): readonly CurveSpec[] {
    return this.#spec.curves;
  }

  measure(theme: Theme): void {
    const { width, height } = this.element.getBoundingClientRect();
    this.#canvas.resize(width, height);
    [this.#width, this.#height] = [width, height];
    this.#arrange(theme, false);
  }

  draw(data: LoopData, theme: Theme): void {
    if (this.#canvas.blurred) this.measure(theme);
    const { context } = this.#canvas;
    this.#canvas.clear();
    if (!data.present) return;
    const { analysis } = data.present;
    const hasStrip = this.#spec.shaped && data.measured !== null;
    this.#arrange(theme, hasStrip);
    this.#fit(data, theme);
    context.font = theme.font;
    const { magnitude } = this.#spec;
    const { reference } = magnitude;
    this.magnitude.drawGround(context, theme, reference);
    this.#phase.drawGround(context, theme, -180);
    this.magnitude.clipped(context, () => {
      if (this.#spec.shaped) this.#drawFilters(context, data, theme);
      this.#drawCurves(context, data, theme, this.magnitude, (response, k) =>
        magnitude.levelOf(response.magnitude[k]!),
      );
      if (this.#spec.shaped) this.#drawGainMargin(context, analysis, theme);
    });
    this.#phase.clipped(context, () => {
      this.#drawCurves(context, data, theme, this.#phase, (response, k) => degrees(response.phase[k]!));
      if (this.#spec.shaped) this.#drawPhaseMargin(context, analysis, theme);
    });
    this.magnitude.drawLevels(context, theme, reference, magnitude.textOf);
    this.#phase.drawLevels(context, theme, -180, (level) => `${String(level).replace('-', '−')}°`);
    if (hasStrip) this.#drawCoherence(context, data, theme);
    const lowest = hasStrip ? this.#coherence : this.#phase;
    lowest.drawFrequencies(context, theme);
    context.textAlign = 'left';
    context.textBaseline = 'middle';
    context.fillStyle = theme.colour('soft');
    const { left, top } = this.magnitude.area;
    drawLabel(context, theme, magnitude.unit, left + 5, top + theme.textSize * 0.8);
    if (data.cursor !== null) this.#drawCursor(context, data, theme, data.cursor);
  }

  #arrange(theme: Theme, hasStrip: boolean): void {
    const left = GUTTER * theme.textSize;
    const width = Math.max(1, this.#width - left - 2);
    const strip = hasStrip ? STRIP * theme.textSize + GAP : 0;
    const height = Math.max(2, this.#height - FOOT * theme.textSize - GAP - strip - 2);
    const upper = Math.round(MAGNITUDE_SHARE * height);
    this.magnitude.area = { left, top: 1, width, height: upper };
    this.#phase.area = { left, top: 1 + upper + GAP, width, height: height - upper };
    const below = 1 + height + 2 * GAP;
    this.#coherence.area = { left, top: below, width, height: STRIP * theme.textSize };
  }

  /** The vertical scales hold every curve in view. */
  #fit({ present, pinned }: LoopData, { textSize }: Theme): void {
    const { magnitude } = this.#spec;
    const range = { low: [Infinity, Infinity], high: [-Infinity, -Infinity] };
    for (const analysed of [present, pinned]) {
      if (!analysed) continue;
      const { frequency } = analysed.analysis;
      for (const curve of this.#spec.curves) {
        const response = curve.of(analysed.analysis);
        for (let k = 0; k < frequency.length; k++) {
          if (frequency[k]! < this.magnitude.axis.from || frequency[k]! > this.magnitude.axis.to) continue;
          const levels = [magnitude.levelOf(response.magnitude[k]!), degrees(response.phase[k]!)];
          for (const [i, level] of levels.entries()) {
            if (level < range.low[i]!) range.low[i] = level;
            if (level > range.high[i]!) range.high[i] = level;
          }
        }
      }
    }
    for (const [i, graph] of [this.magnitude, this.#phase].entries()) {
      graph.scale.fit(range.low[i]!, range.high[i]!, graph.area.height, textSize);
    }
  }

  #drawCurves(
    context: Context,
    { present, pinned, measured, stale }: LoopData,
    theme: Theme,
    graph: Graph,
    level: (response: Response, k: number) => number,
  ): void {
    for (const curve of this.#spec.curves) {
      context.strokeStyle = colourOf(curve, theme);
      if (pinned) {
        context.globalAlpha = 0.45;
        const response = curve.of(pinned.analysis);
        graph.drawCurve(context, pinned.analysis.frequency, (k) => level(response, k), {
          ...curve,
          width: 1.25,
        });
        context.globalAlpha = 1;
      }
      const response = curve.of(present!.analysis);
      graph.drawCurve(context, present!.analysis.frequency, (k) => level(response, k), curve);
    }
    for (const curve of this.#spec.curves) {
      const points = measured && curve.measured?.(measured.loop);
      if (!points) continue;
      context.strokeStyle = colourOf(curve, theme);
      const { frequency: frequencies, coherence } = measured.loop;
      const dense = graph.area.width / frequencies.length < DENSE;
      frequencies.forEach((frequency, k) => {
        const good = coherence[k]! >= GOOD_COHERENCE;
        context.globalAlpha = stale ? 0.35 : good ? 1 : 0.6;
        graph.drawRing(context, theme, frequency, level(points, k), good && !dense ? 3 : 2);
      });
      context.globalAlpha = 1;
    }
  }

  #drawFilters(context: Context, { present }: LoopData, theme: Theme): void {
    const { analysis, parameters } = present!;
    context.strokeStyle = theme.colour('accent');
    for (const name of FILTER_NAMES.filter((each) => parameters[each])) {
      const gain = filterGain(name, parameters);
      const { frequency } = analysis;
      this.magnitude.drawCurve(context, frequency, (k) => decibels(gain(frequency[k]!)), {
        dash: 'dashDot',
        width: 1,
      });
    }
  }

  /** A bar from the curve to 0 dB where the phase passes −180°. */
  #drawGainMargin(context: Context, { figures }: LoopAnalysis, theme: Theme): void {
    const { gainMargin, stable } = figures;
    if (!gainMargin || !stable) return;
    const graph = this.magnitude;
    const x = graph.x(gainMargin.frequency);
    const end = graph.y(-decibels(gainMargin.value));
    context.fillStyle = theme.colour('accent');
    context.fillRect(x - 1.5, graph.y(0), 3, end - graph.y(0));
    context.textAlign = 'center';
    context.textBaseline = 'middle';
    const text = `${inUnit(decibels(gainMargin.value), '', 2)} dB`;
    drawLabel(context, theme, text, x, graph.y(0) - 0.7 * theme.textSize);
  }

  /** A bar from −180° to the curve where |L| = 1. */
  #drawPhaseMargin(context: Context, { figures, frequency, openLoop }: LoopAnalysis, theme: Theme): void {
    const { phaseMargin, stable } = figures;
    if (!phaseMargin || !stable) return;
    const graph = this.#phase;
    const at = degrees(straight(openLoop.phase, placeOn(frequency, phaseMargin.frequency)));
    const x = graph.x(phaseMargin.frequency);
    const [from, to] = [graph.y(at - degrees(phaseMargin.value)), graph.y(at)];
    context.fillStyle = theme.colour('accent');
    context.fillRect(x - 1.5, Math.min(from, to), 3, Math.abs(to - from));
    context.textAlign = 'left';
    context.textBaseline = 'middle';
    drawLabel(context, theme, inUnit(phaseMargin.value, '°', 2), x + 6, (from + to) / 2);
  }

  #drawCoherence(context: Context, { measured, stale }: LoopData, theme: Theme): void {
    const graph = this.#coherence;
    const { frequency, coherence } = measured!.loop;
    graph.drawGround(context, theme, null);
    graph.clipped(context, () => {
      context.globalAlpha = stale ? 0.35 : 1;
      context.strokeStyle = theme.colour('ink');
      graph.drawCurve(context, frequency, (k) => coherence[k]!, { dash: 'solid', width: 1.5 });
      context.globalAlpha = 1;
    });
    graph.drawLevels(context, theme, 1, String);
    context.textAlign = 'left';
    context.fillStyle = theme.colour('soft');
    const { left, top, height } = graph.area;
    drawLabel(context, theme, stale ? 'coherence, outdated' : 'coherence', left + 5, top + height / 2);
  }

  #drawCursor(context: Context, { present }: LoopData, theme: Theme, cursor: number): void {
    const { frequency } = present!.analysis;
    const place = placeOn(frequency, cursor);
    const x = Math.round(this.magnitude.x(cursor));
    for (const { area } of [this.magnitude, this.#phase]) {
      if (x < area.left || x > area.left + area.width) return;
      context.fillStyle = theme.colour('ink');
      context.fillRect(x, area.top, 1, area.height);
    }
    for (const curve of this.#spec.curves) {
      const response = curve.of(present!.analysis);
      context.strokeStyle = colourOf(curve, theme);
      const level = this.#spec.magnitude.levelOf(power(response.magnitude, place));
      this.magnitude.clipped(context, () => this.magnitude.drawRing(context, theme, cursor, level, 3.5));
      const phase = degrees(straight(response.phase, place));
      this.#phase.clipped(context, () => this.#phase.drawRing(context, theme, cursor, phase, 3.5));
    }
  }
}

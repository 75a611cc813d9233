import { sceneById } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import type { Accuracy, TestResult } from '../../../shared/protocol/accuracy.ts';
import { type LoopAnalysis, type MeasuredLoop, startingPoint } from '../../../shared/protocol/analysis.ts';
import type { ForceResidual } from '../../../shared/protocol/fit.ts';
import type { Envelope } from '../../../shared/sizing/sizing.ts';
import { type MotionAsked, motionAsked } from '../../../shared/study/motionAsked.ts';
import { disturbanceChart } from '../../../src/drawings/disturbance.ts';
import { type CandidateCourse, driftChart } from '../../../src/drawings/drift.ts';
import { energyFlowChart } from '../../../src/drawings/energyFlow.ts';
import { envelopeChart } from '../../../src/drawings/envelope.ts';
import { growthChart } from '../../../src/drawings/growth.ts';
import { incrementsChart } from '../../../src/drawings/increments.ts';
import { positioningChart } from '../../../src/drawings/positioning.ts';
import { rippleChart } from '../../../src/drawings/ripple.ts';
import { spectrumChart } from '../../../src/drawings/spectrum.ts';
import { staircaseChart } from '../../../src/drawings/staircase.ts';
import { type TemperatureData, temperaturesChart } from '../../../src/drawings/temperatures.ts';
import { filterGain } from '../../../src/loop/handles/filterGain.ts';
import { type Drawing, drawing } from '../../../src/plot/drawing.ts';
import { BodeChart } from '../../../src/plot/loop/bode.ts';
import { bodeSheet } from '../../../src/plot/loop/bodeSheet.ts';
import { eigenvalueMarks } from '../../../src/plot/loop/eigenvalues.ts';
import { FrequencyAxis } from '../../../src/plot/loop/frequencyAxis.ts';
import { frequencyLabels } from '../../../src/plot/loop/graph.ts';
import type { LoopChartData } from '../../../src/plot/loop/loopData.ts';
import { nyquistMarks, nyquistSheet } from '../../../src/plot/loop/nyquist.ts';
import { Plane } from '../../../src/plot/loop/plane.ts';
import type { BodeName } from '../../../src/plot/loop/responses.ts';
import { TEXT_SIZE } from '../../../src/plot/marks.ts';
import { motionPlot } from '../../../src/study/job/motionPlot.ts';
import { forcesChart, residualChart } from '../../../src/tuning/trace/residualPlot.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { recordedCandidates, recordedJob } from '../../shared/study/recordedStudy.ts';

/** What the charts of the page and of the papers are drawn from. */
export interface ChartData {
  readonly motion: MotionAsked;
  readonly envelope: Envelope;
  readonly accuracy: Accuracy;
  readonly courses: readonly CandidateCourse[];
  readonly temperatures: TemperatureData;
  readonly loop: LoopChartData;
  readonly residual: ForceResidual;
}

const HALF = { width: 420, height: 250 };

/** Every chart of the page, of the report and of the gain sheet, once. */
export function everyChart(data: ChartData): ReadonlyMap<string, Drawing> {
  const { accuracy, courses, loop } = data;
  const job = recordedJob().values;
  return new Map([
    ['motion', motionPlot(data.motion, 'metric', 640)],
    ['envelope', envelopeChart(data.envelope, undefined, HALF)],
    ['positioning', positioningChart(found(at(accuracy.positioning, 0)))],
    ['positioning narrow', positioningChart(found(at(accuracy.positioning, 0)), undefined, HALF)],
    ['staircase', staircaseChart(found(accuracy.staircase), undefined, HALF)],
    ['ripple', rippleChart(found(accuracy.ripple), job.rippleLimit, undefined, HALF)],
    ['spectrum', spectrumChart(found(accuracy.ripple))],
    ['increments', incrementsChart(found(accuracy.increment), undefined, HALF)],
    ['disturbance', disturbanceChart(found(accuracy.disturbance), job.window, undefined, HALF)],
    ['energy flow', energyFlowChart(found(accuracy.energy))],
    ['temperatures', temperaturesChart(data.temperatures, undefined, HALF, 3600)],
    ['growth', growthChart(courses, job.growthLimit)],
    ['drift', driftChart(courses)],
    ['fitted forces', forcesChart(data.residual)],
    ['fit residual', residualChart(data.residual)],
    ['bode open', bodeDrawing('open', loop)],
    ['bode closed', bodeDrawing('closed', loop)],
    ['bode stiffness', bodeDrawing('stiffness', loop)],
    ['nyquist', planeDrawing(new Plane({ re: -0.6, im: 0, half: 1.5 }, [0.05, 500]), loop, 'nyquist')],
    ['eigenvalues', planeDrawing(new Plane({ re: 0, im: 0, half: 1.15 }, [0.005, 3]), loop, 'eigenvalues')],
    ['bode sheet', bodeSheet(loop.analysis)],
    ['nyquist sheet', nyquistSheet(loop.analysis)],
  ]);
}

/** The recorded study, and the loop of a scene. */
export function sampleData(): ChartData {
  const job = recordedJob();
  const candidates = recordedCandidates(job);
  const { outcome, scene, sizing } = at(candidates, 0);
  const { parameters: p } = scene;
  return {
    motion: motionAsked(job),
    envelope: sizing.envelope,
    accuracy: outcome.accuracy,
    courses: candidates.map((each) => ({ letter: each.letter, course: each.outcome.heat.asSet })),
    temperatures: {
      course: outcome.heat.asSet,
      other: outcome.heat.switched,
      foldback: p.foldbackTemperature,
      limit: p.windingLimit,
      hasScrew: p.lead > 0,
    },
    loop: sampleLoop(),
    residual: sampleResidual(),
  };
}

/** A test that was not cut short by a trip. */
export function found<T extends object>(result: TestResult<T>): T {
  if ('trip' in result) throw new Error(result.trip.kind);
  return result;
}

function sampleLoop(): LoopChartData {
  const { parameters: p } = sceneById('soft-coil-mounting');
  const point = { ...startingPoint(p), friction: 'sliding' } as const;
  const analysis = analyse(p, point);
  return {
    analysis,
    pinned: analyse({ ...p, Kp: 0.7 * p.Kp }, point),
    measured: measuredOf(analysis),
    isStale: false,
    cursor: 150,
    filters: [filterGain(1, p)],
  };
}

/** Every twelfth point of an analysis as if it had been measured, worse towards its ends. */
function measuredOf({ frequency, openLoop, sensitivity }: LoopAnalysis): MeasuredLoop {
  const some = (values: Float64Array) => values.filter((_, k) => k % 12 === 0) as Float64Array<ArrayBuffer>;
  const response = ({ magnitude, phase }: typeof openLoop) => ({
    magnitude: some(magnitude),
    phase: some(phase),
  });
  const measured = some(frequency);
  return {
    frequency: measured,
    openLoop: response(openLoop),
    sensitivity: response(sensitivity),
    coherence: measured.map((_, k) => 1 - 0.3 * Math.abs((2 * k) / measured.length - 1) ** 3),
    ended: null,
  };
}

function sampleResidual(): ForceResidual {
  const time = Float64Array.from({ length: 80 }, (_, k) => 0.01 * k);
  const model = time.map((t) => 100 * Math.sin(10 * t));
  const residual = time.map((t) => 3 * Math.sin(90 * t * t));
  return {
    window: 0.01,
    time,
    model,
    residual,
    measured: model.map((value, k) => value + at(residual, k)),
    used: Uint8Array.from(model, (value) => (Math.abs(value) > 20 ? 1 : 0)),
  };
}

function bodeDrawing(name: BodeName, data: LoopChartData): Drawing {
  const axis = new FrequencyAxis();
  axis.setRange(1, 4000);
  const chart = new BodeChart(name, axis);
  chart.magnitude.frame = { left: 48, top: 1, width: 380, height: 180 };
  chart.phase.frame = { left: 48, top: 187, width: 380, height: 110 };
  chart.coherence.frame = { left: 48, top: 303, width: 380, height: 24 };
  chart.fit(data, TEXT_SIZE);
  return drawing({ width: 432, height: 350 }, `Magnitude and phase over frequency: ${chart.spec.title}.`, [
    ...chart.magnitudeMarks(data, TEXT_SIZE),
    ...chart.phaseMarks(data, TEXT_SIZE),
    ...chart.coherenceMarks(data, TEXT_SIZE),
    ...frequencyLabels(chart.coherence, TEXT_SIZE),
    ...chart.cursorMarks(data),
  ]);
}

function planeDrawing(plane: Plane, data: LoopChartData, kind: 'nyquist' | 'eigenvalues'): Drawing {
  plane.frame = { left: 34, top: 1, width: 260, height: 260 };
  const marks =
    kind === 'nyquist'
      ? nyquistMarks(plane, data, TEXT_SIZE, ['modulus 0.61'])
      : eigenvalueMarks(plane, data, TEXT_SIZE);
  return drawing({ width: 296, height: 284 }, `Complex plane: ${kind}.`, marks);
}

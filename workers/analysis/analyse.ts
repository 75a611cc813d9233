import type { Parameters } from '../../shared/core/parameters/table.ts';
import type {
  AtFrequency,
  LoopAnalysis,
  LoopFigures,
  OperatingPoint,
} from '../../shared/protocol/analysis.ts';
import { type Complex, magnitude, ONE, over, plus } from '../math/complex.ts';
import type { ComplexArray } from '../math/complexArray.ts';
import { logSpaced } from '../math/logSpaced.ts';
import { largestMagnitude } from '../math/statistics.ts';
import { modes, refined } from './grid.ts';
import { mainCrossover } from './mainCrossover.ts';
import { bandwidth, type Found, lowest, margins } from './margins.ts';
import { responseOf } from './response.ts';
import { type LoopResponse, SampledLoop } from './sampledLoop.ts';

/** Lowest frequency, Hz, and number of points on the logarithmic scale before refinement. */
const LOWEST = 0.1;
const POINTS = 360;
/**
 * An eigenvalue this close to the unit circle neither grows nor decays: a free axis without
 * position gain stays where it is placed.
 */
const NEUTRAL = 1e-10;

/**
 * Analyses the position loop at an operating point: responses, figures and eigenvalues.
 *
 * @throws RangeError naming the value of the operating point that is out of range, with the allowed
 * range
 */
export function analyse(p: Parameters, point: OperatingPoint): LoopAnalysis {
  const loop = new SampledLoop(p, point);
  const { omega, values } = sampled(
    loop,
    (w) => loop.at(w),
    ({ openLoop, sensitivity, compliance }) => [openLoop, sensitivity, compliance],
  );
  const openLoop = values.map((value) => value.openLoop);
  const eigenvalues = byMagnitude(loop.eigenvalues);
  return {
    frequency: Float64Array.from(omega, hertz),
    openLoop: responseOf(openLoop),
    nyquistRe: Float64Array.from(openLoop, ({ re }) => re),
    nyquistIm: Float64Array.from(openLoop, ({ im }) => im),
    sensitivity: responseOf(
      values.map((value) => value.sensitivity),
      'highest',
    ),
    closedLoop: responseOf(values.map((value) => value.closedLoop)),
    tracking: responseOf(values.map((value) => value.tracking)),
    stiffness: responseOf(values.map(({ compliance }) => over(ONE, compliance))),
    eigenvaluesRe: Float64Array.from(eigenvalues, ({ re }) => re),
    eigenvaluesIm: Float64Array.from(eigenvalues, ({ im }) => im),
    figures: figures(p, loop, omega, values),
  };
}

/** How far a loop is from instability: some of its figures, without the responses that take most of the time. */
export function loopMargins(
  p: Parameters,
  point: OperatingPoint,
): Pick<LoopFigures, 'stable' | 'crossover' | 'phaseMargin' | 'gainMargin' | 'modulusMargin'> {
  const loop = new SampledLoop(p, point);
  const { omega, values } = sampled(
    loop,
    (w) => loop.openLoop(w),
    (openLoop) => [openLoop, over(ONE, plus(ONE, openLoop))],
  );
  const found = margins((w) => loop.openLoop(w), omega, values);
  return {
    stable: spectralRadius(loop) < 1 - NEUTRAL,
    crossover: mainCrossover(p, found.falls.map(hertz)),
    phaseMargin: atFrequency(found.phaseMargin),
    gainMargin: atFrequency(found.gainMargin),
    modulusMargin: atFrequency(found.modulusMargin),
  };
}

/** What is evaluated at frequencies up to half the rate, which are closer where one of the responses changes fast. */
function sampled<R>(
  loop: SampledLoop,
  evaluate: (omega: number) => R,
  responses: (value: R) => readonly Complex[],
): { readonly omega: readonly number[]; readonly values: readonly R[] } {
  const lowest = 2 * Math.PI * LOWEST;
  const highest = Math.PI / loop.period;
  const landmarks = [loop.openPoles, loop.eigenvalues].flatMap((each) => modes(each, loop.period));
  const points = [...logSpaced(lowest, highest, POINTS), ...landmarks];
  return refined(points, lowest, highest, evaluate, responses);
}

function spectralRadius(loop: SampledLoop): number {
  return largestMagnitude(loop.eigenvalues.magnitudes());
}

function figures(
  p: Parameters,
  loop: SampledLoop,
  omega: readonly number[],
  values: readonly LoopResponse[],
): LoopFigures {
  const radius = spectralRadius(loop);
  const found = margins(
    (w) => loop.openLoop(w),
    omega,
    values.map(({ openLoop }) => openLoop),
  );
  const stable = radius < 1 - NEUTRAL;
  const closedLoops = values.map(({ closedLoop }) => closedLoop);
  const width = bandwidth((w) => loop.at(w).closedLoop, omega, closedLoops);
  const min = (f: (value: LoopResponse) => number) => lowest((w) => f(loop.at(w)), omega, values.map(f));
  const troughOfT = min(({ closedLoop }) => 1 / magnitude(closedLoop));
  return {
    stable,
    spectralRadius: radius,
    conditional: stable && found.gainReduction !== null,
    crossover: mainCrossover(p, found.falls.map(hertz)),
    crossovers: found.crossovers.map(hertz),
    phaseMargin: atFrequency(found.phaseMargin),
    gainMargin: atFrequency(found.gainMargin),
    gainReduction: atFrequency(found.gainReduction),
    delayMargin: stable ? atFrequency(found.delayMargin) : null,
    modulusMargin: atFrequency(found.modulusMargin),
    closedLoopPeak: { value: 1 / troughOfT.value, frequency: hertz(troughOfT.omega) },
    bandwidth: width === null ? null : hertz(width),
    staticStiffness: loop.staticStiffness,
    minimumStiffness: atFrequency(min(({ compliance }) => 1 / magnitude(compliance))),
    holdingCurrent: loop.holdingCurrent,
    holdingVoltage: loop.holdingVoltage,
  };
}

function hertz(omega: number): number {
  return omega / (2 * Math.PI);
}

function atFrequency<F extends Found | null>(found: F): F extends null ? AtFrequency | null : AtFrequency;
function atFrequency(found: Found | null): AtFrequency | null {
  return found === null ? null : { value: found.value, frequency: hertz(found.omega) };
}

/** Largest first. */
function byMagnitude(values: ComplexArray): Complex[] {
  return values.toList().sort((a, b) => magnitude(b) - magnitude(a) || b.im - a.im);
}

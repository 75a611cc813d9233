import { designLowpass } from '../../shared/axis/loop/biquadDesign.ts';
import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { positionRate } from '../../shared/core/crossChecks.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { RippleTest } from '../../shared/protocol/accuracy.ts';
import type { Job } from '../../shared/study/job.ts';
import { Biquad } from '../control/biquad.ts';
import { Spectrum } from '../math/spectrum.ts';
import { range, rms } from '../math/statistics.ts';
import { MIN_CYCLES, strongestLines } from './rippleLines.ts';
import { causeOf, periodicTerms } from './ripplePeriods.ts';
import { type ScanPlan, scanPlan } from './scanPlan.ts';
import { TestAxis } from './testAxis.ts';

/**
 * Largest number of places along the scan for the spectrum; each is the mean of the samples in it.
 */
const MAX_PLACES = 2 ** 16;
/**
 * Stretches of the scan, of which the smallest and largest speed are shown, and bands of the
 * spectrum, of which the largest amplitude is shown.
 */
const STRETCHES = 600;
const BANDS = 400;

/**
 * Speed ripple of the table in a scan at constant speed, without acceleration and run-in, and its
 * spectrum over distance. The set position divides the distance evenly; the lag of the table behind
 * it is far smaller than any period. The spectrum extends from the shortest period, two places, to
 * a third of the length; two periods are told apart when the length holds three more waves of the
 * one than of the other.
 */
export function ripple(scene: Scene, job: Job): RippleTest {
  const plan = scanPlan(scene.parameters, job);
  const bandwidth = job.values.rippleBandwidth;
  const samples = scanned(scene, plan, bandwidth);
  const merged = Math.ceil(samples.whole.length / MAX_PLACES);
  const count = samples.whole.length - (samples.whole.length % merged);
  const deviation = samples.whole.subarray(0, count);
  const inBand = samples.inBand.subarray(0, count);
  const { speed } = plan.limits;
  const length = (deviation.length * speed) / positionRate(scene.parameters);
  const spectrum = new Spectrum(means(deviation, merged));
  /**
   * Averaging reduces the amplitude of a wave by sin(m φ/2)/(m sin(φ/2)), φ its angle from sample
   * to sample.
   */
  const trueAmplitude = (amplitude: number, cycles: number) => {
    const half = (Math.PI * cycles) / deviation.length;
    return (amplitude * merged * Math.sin(half)) / Math.sin(merged * half);
  };
  const terms = periodicTerms(scene.parameters, speed);
  const isKnown = (cycles: number) => causeOf(terms, length / cycles, length) !== null;
  const lines = strongestLines(spectrum, isKnown).map(({ cycles, amplitude }) => {
    const whole = trueAmplitude(amplitude, cycles);
    return {
      period: length / cycles,
      amplitude: whole,
      inBand: whole * passed((speed * cycles) / length, bandwidth, positionRate(scene.parameters)),
      cause: causeOf(terms, length / cycles, length),
    };
  });
  return {
    speed,
    length,
    peak: range(deviation) / 2,
    rms: rms(deviation),
    bandwidth,
    inBand: {
      peak: range(inBand) / 2,
      rms: rms(inBand),
      ...extremes(inBand, length),
    },
    ...extremes(deviation, length),
    ...bands(spectrum, length, trueAmplitude),
    lines,
  };
}

/** From this share of the sampling rate on a low-pass changes nothing that is sampled. */
const HIGHEST = 0.45;

/** What a Butterworth low-pass of second order, sampled at `rate`, leaves of a wave: 1/√(1 + (tan(πf/f_s)/tan(πf_b/f_s))⁴). */
function passed(frequency: number, bandwidth: number, rate: number): number {
  if (bandwidth >= HIGHEST * rate) return 1;
  const ratio = Math.tan((Math.PI * frequency) / rate) / Math.tan((Math.PI * bandwidth) / rate);
  return 1 / Math.sqrt(1 + ratio ** 4);
}

/** Table speed over set speed, less 1, at every sample of the measured length: the whole, and within a bandwidth. */
function scanned(
  scene: Scene,
  { limits, from, to, runIn, length }: ScanPlan,
  bandwidth: number,
): { readonly whole: Float64Array; readonly inBand: Float64Array } {
  const rate = positionRate(scene.parameters);
  const lowpass = new Biquad();
  if (bandwidth < HIGHEST * rate) designLowpass(lowpass, bandwidth, Math.SQRT1_2, rate);
  const axis = new TestAxis(scene, from, limits);
  const perSample = limits.speed * axis.period;
  const whole = new Float64Array(Math.floor(length / perSample));
  const inBand = new Float64Array(whole.length);
  let [count, taken] = [-Math.ceil(runIn / perSample), 0];
  axis.settle();
  axis.goTo(to, () => {
    if (axis.motion[C.setAcceleration] !== 0 || taken === whole.length) return;
    const value = valueAt(axis.motion, C.tableSpeed) / limits.speed - 1;
    // The low-pass has the run-in to settle.
    const filtered = lowpass.step(value);
    if (count++ < 0) return;
    whole[taken] = value;
    inBand[taken++] = filtered;
  });
  return { whole: whole.subarray(0, taken), inBand: inBand.subarray(0, taken) };
}

/** Means of `merged` samples each. */
function means(samples: Float64Array, merged: number): Float64Array {
  return Float64Array.from({ length: samples.length / merged }, (_, k) => {
    let sum = 0;
    for (let i = k * merged; i < (k + 1) * merged; i++) sum += valueAt(samples, i);
    return sum / merged;
  });
}

/** Smallest and largest value of each stretch of at least two samples, in order of distance (m). */
export function extremes(samples: Float64Array, length: number): Pick<RippleTest, 'distance' | 'deviation'> {
  const places: number[] = [];
  const stretches = Math.min(STRETCHES, Math.ceil(samples.length / 2));
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = Math.ceil((stretch * samples.length) / stretches);
    const to = Math.ceil(((stretch + 1) * samples.length) / stretches);
    let [low, high] = [from, from];
    for (let k = from; k < to; k++) {
      if (valueAt(samples, k) < valueAt(samples, low)) low = k;
      if (valueAt(samples, k) > valueAt(samples, high)) high = k;
    }
    places.push(...(low === high ? [low] : [Math.min(low, high), Math.max(low, high)]));
  }
  return {
    distance: places.map((k) => (length * k) / samples.length),
    deviation: places.map((k) => valueAt(samples, k)),
  };
}

/**
 * Largest amplitude in each band of periods, shortest first; the bands are evenly wide on a
 * logarithmic scale.
 */
function bands(
  { amplitude, spacing }: Spectrum,
  length: number,
  trueAmplitude: (amplitude: number, cycles: number) => number,
): Pick<RippleTest, 'period' | 'amplitude'> {
  const first = Math.ceil(MIN_CYCLES / spacing);
  const ratio = ((amplitude.length - 1) / first) ** (1 / BANDS);
  const tops: number[] = [];
  for (let band = 0, from = first; band < BANDS; band++) {
    const to = Math.min(Math.round(first * ratio ** (band + 1)), amplitude.length);
    if (to <= from) continue;
    let top = from;
    for (let k = from; k < to; k++) if (valueAt(amplitude, k) > valueAt(amplitude, top)) top = k;
    tops.push(top);
    from = to;
  }
  tops.reverse();
  return {
    period: tops.map((k) => length / (k * spacing)),
    amplitude: tops.map((k) => trueAmplitude(valueAt(amplitude, k), k * spacing)),
  };
}

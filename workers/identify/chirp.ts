import { positionRate } from '../../shared/core/crossChecks.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { MeasuredLoop } from '../../shared/protocol/analysis.ts';
import { transformOf } from '../math/fourier.ts';
import { Axis } from '../run/axis.ts';
import { CrossPower } from './crossPower.ts';
import { type LoopSample, runLoop } from './loopSample.ts';
import { type MeasuredFrequency, measuredLoop } from './measuredLoop.ts';

/** Points per octave; all spectral lines up to half way to the next point are averaged into one. */
const POINTS_PER_OCTAVE = 12;

/**
 * Collects the samples of repeated sweeps. One record extends from the start of a sweep to the
 * start of the next: it holds the whole sweep and the dwell in which the axis comes to rest, so its
 * transform is exact without a window.
 */
class ChirpMeter {
  /** Number of complete records. */
  count = 0;
  readonly #rate: number;
  readonly #records: LoopSample[][] = [];
  #record: LoopSample[] | null = null;
  #sweeping = false;

  /** @param rate of the samples, Hz */
  constructor(rate: number) {
    this.#rate = rate;
  }

  /** Takes every sample, in order. */
  take(sample: LoopSample): void {
    const sweeps = sample.frequency > 0;
    if (sweeps && !this.#sweeping) {
      this.finish();
      this.#record = [];
    }
    this.#sweeping = sweeps;
    this.#record?.push(sample);
  }

  /** Ends the record in progress. */
  finish(): void {
    if (this.#record === null) return;
    this.#records.push(this.#record);
    this.#record = null;
    this.count++;
  }

  /** Points between two frequencies, Hz. */
  points(from: number, to: number): MeasuredFrequency[] {
    const octaves = Math.log2(to / from);
    const powers = Array.from(
      { length: Math.floor(octaves * POINTS_PER_OCTAVE) + 1 },
      () => new CrossPower(),
    );
    for (const record of this.#records) this.#addRecord(record, from, powers);
    return powers
      .map((power, k) => ({ frequency: from * 2 ** (k / POINTS_PER_OCTAVE), power }))
      .filter(({ power }) => Number.isFinite(power.coherence));
  }

  #addRecord(record: readonly LoopSample[], from: number, powers: readonly CrossPower[]): void {
    const added = transformOf(record.map((sample) => sample.added));
    const total = transformOf(withoutTrend(record.map((sample) => sample.total)));
    const size = added.length;
    for (let line = 1; line < size / 2; line++) {
      const frequency = (line * this.#rate) / size;
      const power = powers[Math.round(Math.log2(frequency / from) * POINTS_PER_OCTAVE)];
      power?.add(added.at(line), total.at(line));
    }
  }
}

/**
 * Measures the loop of a scene by repeated sweeps of a force at its output, as set by the sweep
 * rows of its parameters. `dwell` must be long enough for the axis to come to rest.
 *
 * @param sweeps number of sweeps to average
 * @param onProgress receives the share done, 0 to 1, after each sweep
 */
export function measureChirp(
  scene: Scene,
  sweeps = 2,
  onProgress: (share: number) => void = () => {},
): MeasuredLoop {
  const parameters = { ...scene.parameters, program: 'chirp' as const };
  const meter = new ChirpMeter(positionRate(parameters));
  let done = 0;
  const ended = runLoop(new Axis({ ...scene, parameters }), (sample) => {
    meter.take(sample);
    if (meter.count > done) {
      done = meter.count;
      onProgress(done / sweeps);
    }
    return meter.count < sweeps;
  });
  return measuredLoop(meter.points(parameters.sweepFrom, parameters.sweepTo), ended);
}

/**
 * Subtracts the straight line from the first to the last value: holding forces are not part of the
 * response.
 */
function withoutTrend(values: readonly number[]): number[] {
  const [first = 0] = values;
  const slope = ((values.at(-1) ?? 0) - first) / (values.length - 1);
  return values.map((value, k) => value - first - slope * k);
}

import type { Scene } from '../../shared/core/scene.ts';
import type { MeasuredLoop } from '../../shared/protocol/analysis.ts';
import { Axis } from '../run/axis.ts';
import { CrossPower } from './crossPower.ts';
import { demodulate } from './demodulate.ts';
import { type LoopSample, runLoop } from './loopSample.ts';
import { type MeasuredFrequency, measuredLoop } from './measuredLoop.ts';

/**
 * The first half of each tone lets the axis settle; the second is measured in this many parts of
 * whole periods, where it has as many periods.
 */
const SETTLING = 1 / 2;
const LOOKS = 4;

const TURN = 2 * Math.PI;

/**
 * Collects the samples of a stepped sine, given in order, and makes a point of each of its tones.
 */
class SteppedSineMeter {
  readonly points: MeasuredFrequency[] = [];
  #tone: LoopSample[] = [];

  take(sample: LoopSample): void {
    const last = this.#tone.at(-1);
    if (last && sample.segment !== last.segment) this.finish();
    if (sample.frequency > 0) this.#tone.push(sample);
  }

  /** Ends the tone in progress. */
  finish(): void {
    const tone = this.#tone;
    this.#tone = [];
    const [first] = tone;
    const last = tone.at(-1);
    if (!first || !last) return;
    const periods = Math.round(last.phase / TURN);
    const settled = Math.ceil(periods * SETTLING);
    const looks = Math.min(LOOKS, periods - settled);
    if (looks < 1) return;
    const power = new CrossPower();
    const length = Math.floor((periods - settled) / looks);
    for (let k = 0; k < looks; k++) {
      const from = (settled + k * length) * TURN;
      const part = tone.filter(({ phase }) => phase >= from && phase < from + length * TURN);
      const phases = part.map(({ phase }) => phase);
      const amplitude = (value: (sample: LoopSample) => number) => demodulate(phases, part.map(value));
      power.add(
        amplitude(({ added }) => added),
        amplitude(({ total }) => total),
      );
    }
    this.points.push({ frequency: first.frequency, power });
  }
}

/**
 * Measures the loop of a scene by a stepped sine force at its output, as set by the sweep rows of
 * its parameters. Each tone lasts its share of `sweepTime`, half of it to settle.
 *
 * @param onProgress receives the share done, 0 to 1, after each tone
 */
export function measureSteppedSine(
  scene: Scene,
  onProgress: (share: number) => void = () => {},
): MeasuredLoop {
  const parameters = { ...scene.parameters, program: 'stepped sine' as const };
  const meter = new SteppedSineMeter();
  let done = 0;
  const ended = runLoop(new Axis({ ...scene, parameters }), (sample) => {
    meter.take(sample);
    if (meter.points.length > done) {
      done = meter.points.length;
      onProgress(done / parameters.sweepPoints);
    }
    return sample.cycle === 0;
  });
  return measuredLoop(meter.points, ended);
}

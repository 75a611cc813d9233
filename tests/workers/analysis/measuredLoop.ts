import { beforeAll, describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C, type ChannelName } from '../../../shared/core/channels.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import type { MeasuredLoop, Response } from '../../../shared/protocol/analysis.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { demodulate } from '../../../workers/identify/demodulate.ts';
import { measureSteppedSine } from '../../../workers/identify/steppedSine.ts';
import { type Complex, magnitude, over, phase } from '../../../workers/math/complex.ts';
import { sceneOf } from '../model/sceneOf.ts';
import { barePreset, bareStanding, runAxis } from './barePreset.ts';

/*
 * The analysis against measurements on the simulated axis, taken as on a real one: a force is added at the loop output,
 * and the loop's answer is demodulated. The simulation shares the plant with the analysis, but neither its solver nor
 * the code of its loops.
 */

const DECIBELS = 0.5;
const DEGREES = 3;

/** To 40 % of the Nyquist frequency of the position loop: the presets sample at 8 kHz. */
export const SWEEP: ParameterChanges = {
  sweepFrom: 8,
  sweepTo: 0.4 * 4000,
  sweepPoints: 16,
  sweepTime: 8,
  sweepForce: 5,
  dwell: 0.4,
};

/** Largest differences of a measured curve from a computed one, dB and degrees. */
function differences(
  { frequency }: MeasuredLoop,
  measured: Response,
  computed: (omega: number) => Complex,
): { decibels: number; degrees: number } {
  let [decibels, degrees] = [0, 0];
  frequency.forEach((f, k) => {
    const value = computed(2 * Math.PI * f);
    const angle = at(measured.phase, k) - phase(value);
    decibels = Math.max(decibels, Math.abs(20 * Math.log10(at(measured.magnitude, k) / magnitude(value))));
    degrees = Math.max(degrees, (Math.abs(Math.atan2(Math.sin(angle), Math.cos(angle))) * 180) / Math.PI);
  });
  return { decibels, degrees };
}

export function expectAgreement(measured: MeasuredLoop, loop: SampledLoop): void {
  const curves: [Response, (omega: number) => Complex][] = [
    [measured.openLoop, (omega) => loop.openLoop(omega)],
    [measured.sensitivity, (omega) => loop.at(omega).sensitivity],
  ];
  for (const [curve, computed] of curves) {
    const { decibels, degrees } = differences(measured, curve, computed);
    expect(decibels).toBeLessThan(DECIBELS);
    expect(degrees).toBeLessThan(DEGREES);
  }
}

export function measuredBySteppedSine(name: string): void {
  describe(`${name}, measured by a stepped sine`, () => {
    const p = barePreset(name, SWEEP);
    let measured: MeasuredLoop;
    const progress: number[] = [];

    beforeAll(() => {
      measured = measureSteppedSine(sceneOf(p), (share) => progress.push(share));
    });

    it('is complete', () => {
      expect(measured.ended).toBeNull();
      expect(measured.frequency).toHaveLength(p.sweepPoints);
      expect(progress).toHaveLength(p.sweepPoints);
      expect(progress.at(-1)).toBe(1);
    });

    it('has the open loop and sensitivity of the analysis within 0.5 dB and 3°', () => {
      expectAgreement(measured, new SampledLoop(p, bareStanding(p)));
    });

    it('repeats itself: nothing is noisy here', () => {
      expect(Math.min(...measured.coherence)).toBeGreaterThan(0.9999);
    });
  });
}

/** Ratio of two channels at one frequency, after settling, over whole periods. Positions count from the start. */
function ratio(
  p: Parameters,
  frequency: number,
  effect: ChannelName,
  cause: (record: Float64Array) => number,
): Complex {
  const rate = p.currentRate / p.positionDivider;
  const settling = 0.6;
  const whole = Math.ceil(settling * frequency) / frequency;
  const [phases, effects, causes]: [number[], number[], number[]] = [[], [], []];
  const survived = runAxis(p, Math.round((whole + 8 / frequency) * rate), (record, time) => {
    if (time < whole) return;
    phases.push(2 * Math.PI * frequency * time);
    effects.push(at(record, C[effect]) - p.start);
    causes.push(cause(record));
  });
  expect(survived).toBe(true);
  return over(demodulate(phases, effects), demodulate(phases, causes));
}

export function pushedByProcessForce(name: string): void {
  describe(`${name}, pushed by a process force`, () => {
    it.each([12, 50, 200])('gives way at %i Hz as the analysis says', (frequency) => {
      const p = barePreset(name, {
        program: 'hold',
        process: 'sine',
        processForce: 2,
        processFrequency: frequency,
      });
      const measured = ratio(p, frequency, 'tablePosition', (record) => at(record, C.processForce));
      const computed = new SampledLoop(p, bareStanding(p)).compliance(2 * Math.PI * frequency);
      const off = over(measured, computed);
      expect(Math.abs(20 * Math.log10(magnitude(off)))).toBeLessThan(DECIBELS);
      expect(Math.abs((phase(off) * 180) / Math.PI)).toBeLessThan(DEGREES);
    });
  });
}

export function followingSine(name: string): void {
  describe(`${name}, following a sine`, () => {
    it.each([10, 60])('tracks at %i Hz as the analysis says', (frequency) => {
      expectTracking(barePreset(name), frequency);
    });
  });
}

/** The reading follows a sine of this frequency, Hz, as the analysis says. */
export function expectTracking(preset: Parameters, frequency: number): void {
  const p: Parameters = { ...preset, program: 'sine', sineAmplitude: 2e-6, sineFrequency: frequency };
  const measured = ratio(p, frequency, 'encoderPosition', (record) => at(record, C.setpoint) - p.start);
  const computed = new SampledLoop(p, bareStanding(p)).at(2 * Math.PI * frequency).tracking;
  const off = over(measured, computed);
  expect(Math.abs(20 * Math.log10(magnitude(off)))).toBeLessThan(DECIBELS);
  expect(Math.abs((phase(off) * 180) / Math.PI)).toBeLessThan(DEGREES);
}

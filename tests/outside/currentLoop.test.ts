import { describe, expect, it } from 'vitest';
import { at, present, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { Axis } from '../../workers/run/axis.ts';
import { bareScene } from '../workers/model/sceneOf.ts';

/** Current over command of an axis too heavy to move, sampled at each tick after a commanded force step. */
function stepResponse(currentBandwidth: number): number[] {
  const axis = new Axis(
    bareScene({
      program: 'force pulse',
      pulseForce: 10,
      pulseTime: 0.05,
      dwell: 0.01,
      payload: 2000,
      Kp: 0,
      Ki: 0,
      Kd: 0,
      speedFeedforward: 0,
      accelerationFeedforward: 0,
      currentBandwidth,
      positionDivider: 1,
    }),
  );
  const response: number[] = [];
  while (response.length < 400) {
    axis.step();
    const command = valueAt(axis.record, C.currentCommand);
    if (command > 0) response.push(valueAt(axis.record, C.forceCurrent) / command);
  }
  return response;
}

describe('current loop', () => {
  // Magnitude optimum with pole cancellation: Kp = L/(2 Tσ), so 2π f_bw = 1/(2 Tσ), Tσ = 1.5 Ts: one period of computing, half a
  // period of the hold. Kessler 1958; Umland & Safiuddin, IEEE Trans. Industry Applications 26(3), 1990; Schröder, Elektrische
  // Antriebe (figures from memory): overshoot 4.3 %, 2 % settling at 8.4 Tσ. Their 4.7 Tσ to the first 100 % belongs to a lag Tσ; behind a
  // true delay the current arrives sooner, by the recurrence of the sampled integrator below.
  const rate = 16000;
  const tSigma = 1.5;
  const response = stepResponse(rate / (4 * Math.PI * tSigma));

  it('overshoots by about 4.3 % at the magnitude optimum', () => {
    expect(Math.abs(Math.max(...response) - 1.043)).toBeLessThan(0.01);
  });

  it('follows i[n+1] = i[n] + (i* − i[n−1])/(2 Tσ/Ts): the cancelled pole leaves an integrator behind one period of delay', () => {
    const expected = [0, 0];
    while (expected.length < 12)
      expected.push(present(expected.at(-1)) + (1 - present(expected.at(-2))) / (2 * tSigma));
    expected.forEach((value, n) => {
      expect(Math.abs(at(response, n) - value)).toBeLessThan(0.02);
    });
  });

  it('is within 2 % by 8.4 Tσ', () => {
    const after = response.slice(Math.ceil(8.4 * tSigma));
    expect(Math.max(...after.map((value) => Math.abs(value - 1)))).toBeLessThan(0.02);
  });

  it('ends at its command exactly: the integrator removes the resistance', () => {
    expect(response.at(-1)).toBeCloseTo(1, 6);
  });

  it('does nothing for two periods: one to compute, then the voltage has to act', () => {
    expect(response[0]).toBe(0);
    expect(response[1]).toBe(0);
    expect(response[2]).toBeGreaterThan(0);
  });

  it('never asks for more than V_dc/√3 (Holmes & Lipo, Pulse Width Modulation for Power Converters, 2003)', () => {
    const axis = new Axis(bareScene({ program: 'step', stepSize: 1e-3, busVoltage: 48, dwell: 0.05 }));
    let largest = 0;
    for (let k = 0; k < 1600; k++) {
      axis.step();
      largest = Math.max(largest, valueAt(axis.record, C.voltage));
    }
    expect(largest).toBeCloseTo(48 / Math.sqrt(3), 9);
  });
});

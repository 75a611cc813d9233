import { describe, expect, test } from 'vitest';
import { parallelGainsOf } from '../../../../shared/axis/loop/cascade.ts';
import { startGains, startLoop } from '../../../../shared/axis/loop/startGains.ts';
import { present } from '../../../../shared/core/at.ts';
import { checkParameters } from '../../../../shared/core/check.ts';
import { loadSideMass, motorSideMass } from '../../../../shared/core/movedMass.ts';
import { defaultParameters, type Parameters } from '../../../../shared/core/parameters/table.ts';

/** Before rounding. */
function exactGains(p: Parameters, crossover: number) {
  const { cascade, derivativeTime } = startLoop(p, crossover);
  return { ...parallelGainsOf(cascade), derivativeTime };
}

/** L(jω) of the parallel PID with filtered damping on a rigid mass, as magnitude and phase, from polar form term by term. */
function openLoop(p: Parameters, frequency: number, filtered = true) {
  const w = 2 * Math.PI * frequency;
  const lag = filtered ? Math.atan(w * p.derivativeTime) : 0;
  const damping = p.Kd * w * Math.cos(lag);
  const re = p.Kp + damping * Math.sin(lag);
  const im = damping * Math.cos(lag) - p.Ki / w;
  const mass = motorSideMass(p) + loadSideMass(p);
  return {
    magnitude: Math.hypot(re, im) / (mass * w * w),
    phase: (Math.atan2(im, re) * 180) / Math.PI - 180,
  };
}

const withGains = (changes: Partial<Parameters>, crossover: number): Parameters => {
  const p = { ...defaultParameters(), ...changes };
  return { ...p, ...exactGains(p, crossover) };
};

describe.each([
  ['light', { payload: 0.5, tableMass: 1, coilMass: 0.3 }, 140],
  ['usual', {}, 100],
  ['two motors', { motorCount: 2, payload: 25 }, 80],
  ['screw', { lead: 0.01, rotorInertia: 3e-4 }, 30],
])('%s axis', (_name, changes, crossover) => {
  const p = withGains(changes, crossover);

  test('the open loop crosses 1 at the wanted frequency', () => {
    expect(openLoop(p, crossover).magnitude).toBeCloseTo(1, 9);
    expect(openLoop(p, crossover * 1.2).magnitude).toBeLessThan(1);
    expect(openLoop(p, crossover / 1.2).magnitude).toBeGreaterThan(1);
  });

  // Corners at f_c/3 and f_c/10 give atan 3 + atan 10 − 90° = 65.85°; the damping filter at 8 f_c takes a little.
  test('the phase margin is that of the corners', () => {
    const ideal = ((Math.atan(3) + Math.atan(10)) * 180) / Math.PI - 90;
    expect(180 + openLoop(p, crossover, false).phase).toBeCloseTo(ideal, 6);
    expect(ideal).toBeCloseTo(65.854, 3);
    const margin = 180 + openLoop(p, crossover).phase;
    expect(margin).toBeLessThan(ideal);
    expect(margin).toBeGreaterThan(ideal - (Math.atan(1 / 8) * 180) / Math.PI);
  });

  // s³ M + s² Kd + s Kp + Ki: Routh's criterion, Kd Kp > M Ki.
  test('the unfiltered closed loop is stable', () => {
    expect(p.Kd * p.Kp).toBeGreaterThan((motorSideMass(p) + loadSideMass(p)) * p.Ki);
  });
});

test('gains scale with the mass, and with powers of the crossover', () => {
  const one = withGains({ payload: 0.8, tableMass: 8, coilMass: 1.2 }, 50);
  const two = withGains({ payload: 1.6, tableMass: 16, coilMass: 2.4 }, 50);
  const fast = withGains({ payload: 0.8, tableMass: 8, coilMass: 1.2 }, 100);
  for (const gain of ['Kp', 'Ki', 'Kd'] as const) expect(two[gain] / one[gain]).toBeCloseTo(2, 9);
  expect(fast.Kd / one.Kd).toBeCloseTo(2, 9);
  expect(fast.Kp / one.Kp).toBeCloseTo(4, 9);
  expect(fast.Ki / one.Ki).toBeCloseTo(8, 9);
});

test('feedforward takes mass and viscous drag, the bias what the counterbalance leaves of the weight', () => {
  const gains = startGains(
    {
      ...defaultParameters(),
      payload: 5,
      tableMass: 8,
      coilMass: 1.2,
      motorCount: 2,
      viscous: 15,
      nutViscous: 40,
      eddyDrag: 6,
      inclination: Math.PI / 6,
      counterbalance: 50,
    },
    60,
  );
  expect(gains.accelerationFeedforward).toBeCloseTo(15.4, 9);
  expect(gains.speedFeedforward).toBeCloseTo(67, 9);
  // 25.51 N, in three digits.
  expect(gains.forceBias).toBe(Number((15.4 * 9.80665 * 0.5 - 50).toPrecision(3)));
});

// Half a unit of the third digit is at most 0.5 % of a number, of 1.00 that is.
test.each([5, 37, 100, 140, 300])('at %d Hz they are given in three digits', (crossover) => {
  const p = { ...defaultParameters(), payload: 4.567, inclination: 0.3, viscous: 12.3456 };
  const exact = exactGains(p, crossover);
  const given = startGains(p, crossover);
  for (const value of Object.values(given)) expect(value).toBe(Number((value as number).toPrecision(3)));
  for (const name of ['Kp', 'Ki', 'Kd', 'derivativeTime'] as const)
    expect(Math.abs(present(given[name]) / exact[name] - 1), name).toBeLessThanOrEqual(0.005);
});

test('extreme masses and crossovers stay inside the table', () => {
  const p = { ...defaultParameters(), payload: 2000, motorCount: 4 };
  for (const crossover of [1e-3, 1e5])
    expect(checkParameters(startGains(p, crossover), p).problems).toEqual([]);
});

test.each([0, -5, Number.NaN, Infinity])('a crossover of %d Hz is refused', (crossover) => {
  expect(() => startGains(defaultParameters(), crossover)).toThrow(
    /^crossover is .* must be a positive number/,
  );
});

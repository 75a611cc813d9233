import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { Profile } from '../../../shared/motion/profile.ts';
import { positioning } from '../../../workers/accuracy/positioning.ts';
import { measuringPlan } from '../../../workers/accuracy/targets.ts';
import { tested } from '../../../workers/accuracy/testAxis.ts';
import { testLimits } from '../../../workers/accuracy/testLimits.ts';
import type { Temperatures } from '../../../workers/model/state.ts';
import { jobOf, SCREW, tunedScene } from './bench.ts';

const AMBIENT: Temperatures = { winding: 20, carrier: 20, table: 20, screw: 20 };
const job = jobOf({ travel: 0.1 });
/** Room for the job. */
const TRAVEL = { travelMin: -0.055, travelMax: 0.055 };

describe('the targets', () => {
  // ISO 230-2:2014, 5.3 (from memory).
  it.each([
    [0.1, 5],
    [1, 5],
    [1.5, 8],
    [2, 10],
    [4, 17],
  ])('of a travel of %d m are %d, the outer ones at its ends', (travel, count) => {
    const { targets, from, to } = measuringPlan(-0.55 * travel, 0.55 * travel, travel);
    expect(targets).toHaveLength(count);
    expect(targets[0]).toBeCloseTo(-travel / 2, 12);
    expect(targets.at(-1)).toBeCloseTo(travel / 2, 12);
    expect(from).toBeLessThan(at(targets, 0));
    expect(to).toBeGreaterThan(present(targets.at(-1)));
  });

  it('stand in order, each by a share of its own off an even grid', () => {
    const { targets } = measuringPlan(-1.1, 1.1, 2);
    const offsets = targets.map((target, i) => target + 1 - (2 * i) / 9).slice(1, -1);
    const apart = offsets.flatMap((one, i) => offsets.slice(i + 1).map((other) => Math.abs(one - other)));
    expect(Math.min(...apart)).toBeGreaterThan(1e-3);
    expect(targets.every((target, i) => i === 0 || target > at(targets, i - 1))).toBe(true);
  });
});

describe('the moves of a test', () => {
  it.each([0.001, 0.1, 0.25])('of a job that creeps take a second over %d m', (distance) => {
    const { parameters } = tunedScene(60, { speed: 1e-5, acceleration: 1e-3, jerk: 1e-2 });
    const { speed, acceleration, jerk } = testLimits(parameters, distance);
    const profile = new Profile();
    profile.plan(distance, speed, acceleration, jerk);
    expect(profile.duration).toBeCloseTo(1, 9);
  });

  it('of a job that is quicker are those of the job', () => {
    const { parameters: p } = tunedScene(60, { speed: 1, acceleration: 10, jerk: 500 });
    expect(testLimits(p, 0.1)).toEqual({ speed: 1, acceleration: 10, jerk: 500 });
  });
});

describe('positioning', () => {
  // ISO 3408-3:2006, grade 5: 23 µm of travel variation within 300 mm (from memory); the range of a sine over its own targets.
  it('finds the error of the scale or lead that the loop does not see', () => {
    const [amplitude, period] = [11.5e-6, 0.3];
    const given = tunedScene(100, { ...TRAVEL, window: 1e-7, longError: amplitude, longErrorPeriod: period });
    const { figures, targets } = positioning(given, job, 'cold');
    const errors = targets.map((target) => amplitude * Math.sin((2 * Math.PI * target) / period));
    expect(figures.systematic / (Math.max(...errors) - Math.min(...errors))).toBeCloseTo(1, 3);
  });

  it('of an axis without fault has no error: below a tenth of a nanometre', () => {
    const { figures } = positioning(tunedScene(100, { ...TRAVEL, window: 1e-10 }), job, 'cold');
    expect(figures.accuracy).toBeLessThan(1e-10);
  });

  // Handbook values, from memory: steel 11.7 µm/(m·K), glass 8 µm/(m·K).
  it.each([
    [
      'a steel screw 10 K warmer, encoder on the motor',
      { ...SCREW, screwExpansion: 11.7e-6 },
      { ...AMBIENT, screw: 30 },
      117e-6,
    ],
    ['a glass scale 5 K warmer', { scaleExpansion: 8e-6 }, { ...AMBIENT, table: 25 }, 40e-6],
  ] as const)('finds %s as systematic error', (_, changes, temperatures, strain) => {
    const { targets, figures } = positioning(
      tunedScene(100, { ...TRAVEL, ...changes, window: 1e-9 }),
      job,
      'warm',
      { temperatures },
    );
    const grown = strain * (present(targets.at(-1)) - at(targets, 0));
    for (const value of [figures.systematic, figures.meanRange, figures.accuracy])
      expect(Math.abs(value / grown - 1)).toBeLessThan(2e-3);
    expect(figures.meanUp.at(-1)).toBeGreaterThan(0);
  });

  it('says why the drive tripped when it cannot be made', () => {
    const scene = tunedScene(100, { Kp: 1e9, Kd: 0, program: 'shuttle' });
    const result = tested(() => positioning(scene, job, 'cold'));
    expect('trip' in result && result.trip.kind).toBeTruthy();
  });
});

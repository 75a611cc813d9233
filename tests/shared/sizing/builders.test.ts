import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { areaMoment, nutLife, pairLife, preloadedPair, sag } from '../../../shared/sizing/shaft.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { defaultJobValues, type Job, type JobValues } from '../../../shared/study/job.ts';

/* What a machine builder asks beside force and heat: screw, shaft, brake, supply. Worked out by hand beside each figure. */

const GRAVITY = 9.80665;

function sized(preset: string, changes: Partial<JobValues> = {}, own: ParameterChanges = {}) {
  const job: Job = { title: 'Job', values: { ...defaultJobValues(), ...changes }, moves: [] };
  const scene = candidateScene(job, { preset, motorCount: 1, own, gains: null }, PRESETS);
  const { figures, reasons } = sizeCandidate(job, scene);
  const figure = (id: string) => present(figures.find((each) => each.id === id));
  return {
    figure,
    value: (id: string) => figure(id).value,
    has: (id: string) => figures.some((each) => each.id === id),
    reasons,
    p: scene.parameters,
  };
}

describe('a beam under its own weight', () => {
  // Round steel bar of 20 mm on two supports 1 m apart: 24.18 N/m, I = 7854 mm⁴; f = 5 w l⁴/(384 E I), J. M. Gere, table G-2.
  it('sags as the handbook says', () => {
    const weight = 7850 * Math.PI * 0.01 ** 2 * GRAVITY;
    expect(sag(weight, 1, 2.06e11, areaMoment(0.02))).toBeCloseTo(0.0001946, 7);
  });

  it('sags sixteen times as much at twice the length', () => {
    expect(sag(1, 2, 1, 1) / sag(1, 1, 1, 1)).toBe(16);
  });
});

describe('the life of a ball nut after ISO 3408-5', () => {
  it('is a million turns at its rating, a thousand million at a tenth of it', () => {
    expect(nutLife(20e3, 20e3)).toBe(1e6);
    expect(nutLife(20e3, 2e3)).toBeCloseTo(1e9, 3);
  });

  it('of two halves alike is 2^(−0.9) of one', () => {
    expect(pairLife(1e8, 1e8) / 1e8).toBeCloseTo(0.5359, 4);
    expect(pairLife(1e8, Infinity)).toBeCloseTo(1e8, 0);
  });

  it('counts the preload of both halves, until the thrust takes it off one', () => {
    expect(preloadedPair(0, 1000)).toEqual({ loaded: 1000, other: 1000 });
    const lift = 2 ** 1.5 * 1000;
    expect(preloadedPair(lift, 1000).loaded).toBeCloseTo(lift, 6);
    expect(preloadedPair(lift * (1 - 1e-9), 1000).loaded).toBeCloseTo(lift, 2);
    expect(preloadedPair(5000, 1000)).toEqual({ loaded: 5000, other: 0 });
  });

  it('falls short where a small screw has to last long under a heavy duty', () => {
    const easy = sized('screw-640-fine', { moveTime: 3, stroke: 0.25 });
    expect(easy.figure('nutLife').standing).toBe('good');
    const hard = sized(
      'screw-640-fine',
      { moveTime: 3, stroke: 0.25, years: 25, dailyTime: 86400, days: 366 },
      { nutRating: 3000 },
    );
    expect(hard.figure('nutLife').standing).toBe('beyond');
    expect(hard.reasons.join(' ')).toMatch(/^The ball nut lasts .* under this duty, but the job counts /);
  });

  it('is no figure of a nut without a rating, or of a linear motor', () => {
    expect(sized('screw', {}, { nutRating: 0 }).has('nutLife')).toBe(false);
    expect(sized('tubular').has('nutLife')).toBe(false);
  });
});

describe('the balls of a nut', () => {
  // Nominal diameter 17.05 mm/0.85 = 20.06 mm; 0.9375 m/s at a lead of 20 mm are 2812.5 turns a minute: 56 400 mm/min.
  it('run at the nominal diameter times the speed', () => {
    expect(sized('screw').value('ballSpeed')).toBeCloseTo((Math.PI * 0.02006 * 2812.5) / 60, 2);
  });

  // 100 000 mm/min.
  it('may run at 5.24 m/s', () => {
    expect(present(sized('screw').figure('ballSpeed').limit).value).toBeCloseTo(5.236, 3);
  });
});

describe('what lies along the travel', () => {
  it('is as long as travel and coil unit, for all tracks that stand beside each other', () => {
    const one = sized('tubular');
    expect(one.value('trackLength')).toBeCloseTo(one.value('installedLength'), 12);
    expect(one.value('installedLength')).toBeCloseTo(0.4 + 0.27, 12);
  });

  it('sags with the fourth power of its length, and is refused where it would touch', () => {
    const [short, long] = [sized('tubular', { travel: 0.4 }), sized('tubular', { travel: 1.2 })];
    const length = (travel: number) => travel + 0.27 + 0.1;
    expect(long.value('shaftSag') / short.value('shaftSag')).toBeCloseTo((length(1.2) / length(0.4)) ** 4, 6);
    expect(short.figure('shaftSag').standing).toBe('good');
    expect(long.figure('shaftSag').standing).toBe('beyond');
    expect(sized('tubular', { travel: 1.2, inclination: Math.PI / 2 }).value('shaftSag')).toBeLessThan(1e-12);
    expect(sized('u-channel').has('shaftSag')).toBe(false);
  });

  it('may be sixty diameters of a screw', () => {
    expect(sized('screw', { travel: 1.5, moveTime: 3 }).figure('slenderness').standing).toBe('beyond');
  });
});

describe('an axis held against gravity', () => {
  const axis = sized('tubular', { inclination: Math.PI / 2, payload: 5 });
  const weight = (5 + 8 + 2.6) * GRAVITY;

  it('needs 1.41 times its holding force as continuous force, where one phase carries all', () => {
    expect(axis.value('stallUtilisation')).toBeCloseTo((weight * Math.SQRT2) / 300, 9);
  });

  it('drops by half g t² less friction until its brake holds', () => {
    const acceleration = (weight - 3) / 15.6;
    expect(axis.value('drop')).toBeCloseTo((acceleration * 0.05 ** 2) / 2, 6);
    expect(axis.value('brakeForce')).toBeCloseTo(2 * weight, 9);
    expect(sized('tubular').has('drop')).toBe(false);
  });
});

describe('the supply', () => {
  // At 0.9375 m/s the 15.6 kg hold 6.86 J; friction and copper take their part on the way to a stop.
  it('gets back less than the energy of motion from a braking', () => {
    const { value } = sized('tubular');
    const motion = (15.6 * 0.9375 ** 2) / 2;
    expect(value('brakingEnergy')).toBeGreaterThan(0.3 * motion);
    expect(value('brakingEnergy')).toBeLessThan(motion);
  });

  // 1 mF between 325 V and 390 V: 23.2 J.
  it('burns what the bus cannot store', () => {
    expect(sized('tubular').value('brakeResistor')).toBe(0);
    const none = sized('tubular', { busCapacitance: 1e-5 });
    // Two brakings in 1.2 s; the bus stores 0.23 J of each.
    const mean = (2 * (none.value('brakingEnergy') - 0.2324)) / 1.2;
    expect(none.value('brakeResistor') / mean).toBeCloseTo(1, 1);
  });
});

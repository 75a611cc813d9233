/** The programs that push on a standing axis, against what the parameter table says they do. */
import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import type { ProgramOutput } from '../../../workers/command/setpoint.ts';
import { record, TP, worst } from './recording.ts';

describe('chirp', () => {
  const chirp = {
    program: 'chirp',
    dwell: 0.25,
    sweepForce: 7,
    sweepFrom: 5,
    sweepTo: 200,
    sweepTime: 4,
  } as const;
  const swinging = (outs: ProgramOutput[]) => outs.filter(({ segment }) => segment === 1);

  // A. Farina, Simultaneous measurement of impulse response and distortion with a swept-sine technique, 108th AES
  // Convention, Paris 2000, from memory: φ(t) = 2π f1 T/ln(f2/f1) (exp(t/T ln(f2/f1)) − 1). So φ(T)/2π, the number of
  // periods, is T (f2 − f1)/ln(f2/f1); the nearest T to the one asked for that makes it a whole number is taken.
  it('sweeps logarithmically from the first to the last frequency', () => {
    const outs = swinging(record(chirp, 5));
    const span = Math.log(200 / 5);
    const T = (Math.round((4 * 195) / span) * span) / 195;
    expect(outs.length).toBe(Math.ceil(T / TP));
    const grown = (n: number) => Math.exp((n * TP * span) / T);
    const phase = (n: number) => ((2 * Math.PI * 5 * T) / span) * (grown(n) - 1);
    expect(worst(outs, (out, n) => out.frequency / (5 * grown(n)) - 1)).toBeLessThan(1e-13);
    expect(worst(outs, (out, n) => out.phase - phase(n))).toBeLessThan(1e-10);
    expect(worst(outs, (out, n) => out.force - 7 * Math.sin(phase(n)))).toBeLessThan(1e-9);
    expect(outs[0]).toMatchObject({ force: 0, frequency: 5, phase: 0 });
    expect(present(outs.at(-1)).frequency).toBeCloseTo(200, 0);
  });

  it('states the frequency at which its phase advances', () => {
    const outs = swinging(record(chirp, 5));
    const inner = outs.slice(1, -1);
    const advance = (n: number) => (at(outs, n + 2).phase - at(outs, n).phase) / (2 * TP) / (2 * Math.PI);
    expect(worst(inner, (out, n) => advance(n) / out.frequency - 1)).toBeLessThan(1e-6);
  });

  it('swings whole periods, so that the force ends at zero', () => {
    const outs = swinging(record(chirp, 5));
    const crossings = outs.filter((out, n) => n > 0 && at(outs, n - 1).force < 0 && out.force >= 0).length;
    const last = present(outs.at(-1));
    const periods = (last.phase + 2 * Math.PI * last.frequency * TP) / (2 * Math.PI);
    expect(crossings).toBe(Math.round(periods) - 1);
    expect(Math.abs(last.force)).toBeLessThan(7 * 2 * Math.PI * 200 * TP);
  });

  it('also sweeps downwards, and stays on one frequency if both are the same', () => {
    const down = swinging(record({ ...chirp, sweepFrom: 200, sweepTo: 5 }, 5));
    expect(at(down, 0).frequency).toBe(200);
    expect(present(down.at(-1)).frequency).toBeCloseTo(5, 1);
    expect(worst(swinging(record({ ...chirp, sweepTo: 5 }, 3)), ({ frequency }) => frequency - 5)).toBe(0);
  });
});

describe('stepped sine', () => {
  const stepped = {
    program: 'stepped sine',
    dwell: 0.1,
    sweepForce: 3,
    sweepFrom: 10,
    sweepTo: 160,
    sweepPoints: 5,
    sweepTime: 2,
  } as const;

  it('dwells on log-spaced frequencies for whole periods each', () => {
    const outs = record(stepped, 2.15);
    const expected = [10, 20, 40, 80, 160];
    expected.forEach((frequency, k) => {
      const tone = outs.filter(({ segment }) => segment === 1 + k);
      expect(at(tone, 0).frequency).toBeCloseTo(frequency, 10);
      // 0.4 s of each, as 0.4 f is a whole number here: the upward crossings, of which one is on each seam.
      const periods = tone.filter((out, n) => n > 0 && at(tone, n - 1).force < 0 && out.force >= 0).length;
      expect(Math.abs(periods + 1 - 0.4 * frequency)).toBeLessThanOrEqual(1);
      expect(tone.length * TP).toBeCloseTo(0.4, 3);
      expect(Math.max(...tone.map(({ force }) => force))).toBeGreaterThan(2.95);
    });
    expect(outs.at(-1)).toMatchObject({ cycle: 1, force: 0 });
  });

  it('goes on from frequency to frequency without a step of the force', () => {
    const outs = record({ ...stepped, sweepTo: 157, sweepPoints: 37 }, 3);
    const jump = worst(outs, (out, n) => out.force - (outs[n - 1]?.force ?? 0));
    expect(jump).toBeLessThanOrEqual(3 * 2 * Math.PI * 157 * TP);
    // Every tone has at least four periods, and ends where the next begins: the phase never jumps.
    for (let n = 1; n < outs.length; n++) {
      const [a, b] = [at(outs, n - 1), at(outs, n)];
      if (a.frequency === 0 || b.frequency === 0 || a.segment === b.segment) continue;
      const left = Math.ceil(a.phase / (2 * Math.PI) - 1e-9) - a.phase / (2 * Math.PI);
      expect(left / a.frequency + b.phase / (2 * Math.PI * b.frequency)).toBeCloseTo(TP, 12);
    }
  });
});

describe('stepped sine within little time', () => {
  it('takes four periods of each frequency at least', () => {
    const outs = record(
      { program: 'stepped sine', dwell: 0, sweepFrom: 10, sweepTo: 40, sweepPoints: 3, sweepTime: 0.05 },
      0.8,
    );
    const length = (k: number) => outs.filter(({ segment }) => segment === k).length * TP;
    expect([length(1), length(2), length(3)].map((time) => Math.round(time * 100))).toEqual([40, 20, 10]);
  });
});

describe('force pulse', () => {
  it('pushes for its time after each dwell', () => {
    const outs = record({ program: 'force pulse', pulseForce: -20, pulseTime: 0.125, dwell: 0.25 }, 1.5);
    expect(worst(outs, (out, n) => out.force - ((n * TP) % 0.375 >= 0.25 ? -20 : 0))).toBe(0);
    expect(outs.some(({ moving }) => moving)).toBe(false);
    expect(present(outs.at(-1)).cycle).toBe(3);
  });

  it('is not missed if it is shorter than a sample', () => {
    const outs = record({ program: 'force pulse', pulseTime: 1e-4, dwell: 0.1 }, 1.1);
    expect(outs.filter(({ force }) => force === 20).length).toBe(10);
  });
});

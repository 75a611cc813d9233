/**
 * Each program against what the parameter table says it does. Where a number is not plain arithmetic, its source stands
 * beside it. The sample period is a power of two, so that sample times are exact and cycles can be compared bit by bit.
 */
import { describe, expect, it } from 'vitest';
import { defaultParameters, type Parameters } from '../../shared/parameters/table.ts';
import type { MoveLine } from '../../shared/scene.ts';
import { Program } from '../../workers/command/program.ts';
import { newProgramOutput, type ProgramOutput } from '../../workers/command/setpoint.ts';

const TP = 2 ** -12;

const MOVES: readonly MoveLine[] = [
  { to: 0.1, speed: 1, acceleration: 10, jerk: 500, dwell: 0.05 },
  { to: -0.05, speed: 0.2, acceleration: 4, jerk: 100, dwell: 0 },
];

function parameters(changes: Partial<Parameters>): Parameters {
  return { ...defaultParameters(), ...changes };
}

/** The output at `count` samples from the reset. */
function run(program: Program, count: number, from = 0): ProgramOutput[] {
  return Array.from({ length: count }, (_, n) => {
    const out = newProgramOutput();
    program.advance((from + n) * TP, out);
    return out;
  });
}

const record = (changes: Partial<Parameters>, seconds: number, moves = MOVES) =>
  run(new Program(parameters(changes), moves), Math.round(seconds / TP));

/** Largest magnitude of a deviation over all outputs. */
const worst = (outs: readonly ProgramOutput[], deviation: (out: ProgramOutput, n: number) => number) =>
  outs.reduce((most, out, n) => Math.max(most, Math.abs(deviation(out, n))), 0);

const ALL: readonly Parameters['program'][] = [
  'hold',
  'shuttle',
  'scan',
  'sine',
  'staircase',
  'step',
  'chirp',
  'stepped sine',
  'force pulse',
  'list',
];

describe('every program', () => {
  it.each(ALL)('%s begins at the start and is the same after a reset', (program) => {
    const axis = new Program(parameters({ program }), MOVES);
    const first = run(axis, 5000);
    axis.reset();
    expect(run(axis, 5000)).toEqual(first);
    expect(first[0]!.position).toBe(program === 'step' ? -0.1 + 1e-5 : -0.1);
    expect(first[0]).toMatchObject({ speed: 0, acceleration: 0, cycle: 0 });
    expect(first.some((out) => Object.values(out).some(Number.isNaN))).toBe(false);
  });

  it.each(ALL)('%s swings a force only while it stands still', (program) => {
    const outs = record({ program, dwell: 0.05 }, 3);
    const forced = program === 'chirp' || program === 'stepped sine' || program === 'force pulse';
    expect(outs.some(({ force }) => force !== 0)).toBe(forced);
    const standing = outs.every(
      ({ force, position, speed }) => force === 0 || (position === -0.1 && speed === 0),
    );
    expect(standing).toBe(true);
  });
});

describe('hold', () => {
  it('stays where it is', () => {
    const [first, ...rest] = record({ program: 'hold' }, 1);
    expect(first).toEqual({ ...newProgramOutput(), position: -0.1 });
    expect(rest.every((out) => out.position === -0.1 && out.speed === 0 && !out.moving)).toBe(true);
  });

  it('follows its position by a move', () => {
    const axis = new Program(parameters({ program: 'hold' }), []);
    run(axis, 100);
    axis.setParameters(parameters({ program: 'hold', start: 0.1 }));
    const outs = run(axis, 4000, 100);
    expect(outs[0]).toMatchObject({ position: -0.1, moving: true });
    expect(outs.at(-1)).toMatchObject({ position: 0.1, speed: 0, moving: false });
  });
});

describe('shuttle', () => {
  // One move takes 3.1748021 s: L. Berscheid, T. Kröger, RSS 2021, D = V = A = J = 1 (see profile.test.ts).
  const slow = { stroke: 1, speed: 1, acceleration: 1, jerk: 1, dwell: 0.5 } as const;
  const move = Math.ceil(3.1748021039 / TP);
  const dwell = 0.5 / TP;

  it('moves, dwells, returns, dwells, on the sample', () => {
    const outs = record(slow, 2 * (3.1748021039 + 0.5) + 0.01);
    const segments = [move, move + dwell, 2 * move + dwell, 2 * (move + dwell)];
    segments.forEach((n, finished) => {
      expect(outs[n - 1]!.segment).toBe(finished);
      expect(outs[n]!.segment).toBe(finished + 1);
      expect(outs[n]).toMatchObject({ speed: 0, acceleration: 0, moving: finished % 2 === 1 });
    });
    expect(outs[move]!.position).toBe(0.9);
    expect(outs[2 * move + dwell]!.position).toBe(-0.1);
    expect(outs[2 * (move + dwell) - 1]!.cycle).toBe(0);
    expect(outs[2 * (move + dwell)]!.cycle).toBe(1);
  });

  it('repeats each cycle exactly', () => {
    const length = 2 * (move + dwell);
    const outs = record(slow, 4 * length * TP + 0.1);
    expect(outs.at(-1)!.cycle).toBe(4);
    for (let n = 0; n < 3 * length; n += 7) {
      const { cycle, segment, ...rest } = outs[n]!;
      expect(outs[n + length]).toEqual({ ...rest, cycle: cycle + 1, segment: segment + 4 });
    }
  });

  it('runs the other way with a negative stroke', () => {
    const outs = record({ ...slow, stroke: -1 }, 4);
    expect(outs[move]!.position).toBe(-1.1);
  });

  it('takes new limits at the next segment and a new stroke with them', () => {
    const axis = new Program(parameters(slow), []);
    run(axis, 100);
    axis.setParameters(
      parameters({ ...slow, stroke: 0.5, start: 0, speed: 0.1, acceleration: 100, jerk: 1e5 }),
    );
    const outs = run(axis, 130_000, 100);
    const end = (k: number) => outs.find(({ segment }) => segment === k)!.position;
    expect([end(1), end(3), end(5), end(7), end(9)]).toEqual([0.9, -0.1, 0, 0.5, 0]);
    const returning = outs.filter(({ segment, moving }) => segment >= 2 && moving);
    expect(Math.max(...returning.map(({ speed }) => Math.abs(speed)))).toBeCloseTo(0.1, 12);
  });

  it('shortens a running dwell at once, or makes it longer', () => {
    const axis = new Program(parameters({ ...slow, dwell: 60 }), []);
    const still = run(axis, move + 1000).at(-1)!;
    expect(still).toMatchObject({ segment: 1, position: 0.9, moving: false });
    axis.setParameters(parameters({ ...slow, dwell: 0.1 }));
    expect(run(axis, 1, move + 1000)[0]).toMatchObject({ segment: 2, position: 0.9, moving: true });

    axis.reset();
    axis.setParameters(parameters({ ...slow, dwell: 0.5 }));
    run(axis, move + 100);
    axis.setParameters(parameters({ ...slow, dwell: 1 }));
    const longer = run(axis, 2 * dwell, move + 100);
    expect(longer[2 * dwell - 101]!.segment).toBe(1);
    expect(longer[2 * dwell - 100]!.segment).toBe(2);
  });
});

describe('scan', () => {
  it('feeds at the scan speed and returns at the move speed', () => {
    const outs = record({ program: 'scan', scanSpeed: 0.05, speed: 0.8, dwell: 0.1 }, 6);
    const feed = outs.filter(({ segment }) => segment === 0);
    const back = outs.filter(({ segment }) => segment === 2);
    expect(Math.max(...feed.map(({ speed }) => speed))).toBeCloseTo(0.05, 14);
    // Ramps to 0.05 m/s under 10 m/s² and 500 m/s³ take V/A + A/J = 25 ms each, or 2 √(V/J) = 20 ms without a plateau.
    const atSpeed = feed.filter(({ jerk, acceleration }) => jerk === 0 && acceleration === 0);
    expect(atSpeed.length * TP).toBeCloseTo(0.2 / 0.05 - 0.02, 3);
    expect(Math.min(...back.map(({ speed }) => speed))).toBeCloseTo(-0.8, 14);
  });
});

describe('sine', () => {
  const sine = { program: 'sine', start: 0, sineAmplitude: 0.004, sineFrequency: 4 } as const;

  it('grows out of standstill in one period without a step of acceleration or jerk', () => {
    const outs = record(sine, 0.25);
    const w = 2 * Math.PI * 4;
    const change = (what: 'speed' | 'acceleration' | 'jerk') =>
      worst(outs.slice(1), (out, n) => out[what] - outs[n]![what]);
    // The full sine changes at these rates at most; growing from nothing in one period at most a few times as fast.
    expect(change('speed')).toBeLessThan(0.004 * w ** 2 * TP * 2);
    expect(change('acceleration')).toBeLessThan(0.004 * w ** 3 * TP * 2);
    expect(change('jerk')).toBeLessThan(0.004 * w ** 4 * TP * 4);
    expect(Math.abs(outs[1]!.jerk)).toBeLessThan(0.004 * w ** 4 * TP);
  });

  it('is the sine from then on, one cycle per period', () => {
    const outs = record(sine, 3);
    const w = 2 * Math.PI * 4;
    const grown = Math.round(0.25 / TP);
    const full = outs.slice(grown);
    const phase = (n: number) => w * (n + grown) * TP;
    expect(worst(full, (out, n) => out.position / 0.004 - Math.sin(phase(n)))).toBeLessThan(1e-11);
    expect(worst(full, (out, n) => out.speed / (0.004 * w) - Math.cos(phase(n)))).toBeLessThan(1e-11);
    expect(worst(full, (out, n) => out.acceleration / (0.004 * w ** 2) + Math.sin(phase(n)))).toBeLessThan(
      1e-11,
    );
    expect(worst(full, (out, n) => out.jerk / (0.004 * w ** 3) + Math.cos(phase(n)))).toBeLessThan(1e-11);
    expect(worst(full, (out, n) => out.cycle - Math.floor((n + grown) * TP * 4))).toBe(0);
  });

  it('keeps its phase although its period is no whole number of samples', () => {
    const outs = record({ ...sine, sineFrequency: 3.7 }, 20);
    const grown = Math.ceil(1 / 3.7 / TP);
    const sine37 = (n: number) => Math.sin(2 * Math.PI * 3.7 * (n + grown) * TP);
    expect(worst(outs.slice(grown), (out, n) => out.position / 0.004 - sine37(n))).toBeLessThan(1e-10);
  });

  it('comes to rest before another frequency, another centre, or another program', () => {
    const axis = new Program(parameters(sine), []);
    run(axis, 3000);
    axis.setParameters(parameters({ ...sine, sineFrequency: 9, start: 0.02 }));
    const outs = run(axis, 3 / TP, 3000);
    // The period in which the change came ends at 0.75 s, the one that dies away at 1 s.
    const at = (time: number) => outs[Math.round(time / TP) - 3000]!;
    expect(at(1)).toMatchObject({ position: 0, speed: 0, acceleration: 0 });
    const swing = outs.slice(-Math.round(1 / TP)).map(({ position }) => position);
    expect(Math.max(...swing)).toBeCloseTo(0.024, 6);
    expect(Math.min(...swing)).toBeCloseTo(0.016, 6);

    axis.setParameters(parameters({ program: 'hold', start: 0.05 }));
    expect(run(axis, 2 / TP, 3000 + 3 / TP).at(-1)).toMatchObject({ position: 0.05, moving: false });
  });
});

describe('staircase', () => {
  it('climbs and descends stair by stair, standing on each', () => {
    const outs = record({ program: 'staircase', start: 0, stairStep: 5e-9, stairCount: 3, dwell: 0.05 }, 1);
    const stand = (k: number) => outs.find(({ segment }) => segment === k)!;
    const levels = [1, 3, 5, 7, 9, 11].map((k) => Math.round(stand(k).position / 1e-9));
    expect(levels).toEqual([5, 10, 15, 10, 5, 0]);
    expect(stand(11).cycle).toBe(0);
    expect(stand(12).cycle).toBe(1);
    // The least time for 5 nm under 500 m/s³ is (32 D/J)^(1/3) = 0.684 ms (as for the shuttle above): three samples.
    expect(outs.findIndex(({ segment }) => segment === 1)).toBe(3);
  });
});

describe('step', () => {
  it('jumps at once, dwells, jumps back, and is seen moving for one sample', () => {
    const outs = record({ program: 'step', start: 0, stepSize: 2e-5, dwell: 0.25 }, 1.01);
    const jumps = [0, 0.25, 0.5, 0.75, 1].map((time) => time / TP);
    const up = (n: number) => Math.floor((n * TP) / 0.25) % 2 === 0;
    expect(worst(outs, (out, n) => out.position - (up(n) ? 2e-5 : 0))).toBe(0);
    expect(worst(outs, (out) => Math.abs(out.speed) + Math.abs(out.acceleration))).toBe(0);
    expect(outs.flatMap(({ moving }, n) => (moving ? [n] : []))).toEqual(jumps);
    expect(outs.at(-1)!.cycle).toBe(2);
  });

  it('never jumps by anything but its step, whatever is changed meanwhile', () => {
    const step = { program: 'step', start: 0, stepSize: 2e-5, dwell: 0.25 } as const;
    const axis = new Program(parameters(step), []);
    run(axis, 100);
    axis.setParameters(parameters({ ...step, start: 0.05, stepSize: 1e-4 }));
    const outs = run(axis, 1.1 / TP, 100);
    // A jump is a change that the set speed does not explain.
    const jumps = outs
      .slice(1)
      .map((out, n) => out.position - outs[n]!.position - out.speed * TP)
      .filter((jump) => Math.abs(jump) > 15e-6);
    expect(jumps.map((jump) => Math.round(jump * 1e6))).toEqual([-20, 100, -100]);
  });
});

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
    expect(outs.at(-1)!.frequency).toBeCloseTo(200, 0);
  });

  it('states the frequency at which its phase advances', () => {
    const outs = swinging(record(chirp, 5));
    const inner = outs.slice(1, -1);
    const advance = (n: number) => (outs[n + 2]!.phase - outs[n]!.phase) / (2 * TP) / (2 * Math.PI);
    expect(worst(inner, (out, n) => advance(n) / out.frequency - 1)).toBeLessThan(1e-6);
  });

  it('swings whole periods, so that the force ends at zero', () => {
    const outs = swinging(record(chirp, 5));
    const crossings = outs.filter((out, n) => n > 0 && outs[n - 1]!.force < 0 && out.force >= 0).length;
    const last = outs.at(-1)!;
    const periods = (last.phase + 2 * Math.PI * last.frequency * TP) / (2 * Math.PI);
    expect(crossings).toBe(Math.round(periods) - 1);
    expect(Math.abs(last.force)).toBeLessThan(7 * 2 * Math.PI * 200 * TP);
  });

  it('also sweeps downwards, and stays on one frequency if both are the same', () => {
    const down = swinging(record({ ...chirp, sweepFrom: 200, sweepTo: 5 }, 5));
    expect(down[0]!.frequency).toBe(200);
    expect(down.at(-1)!.frequency).toBeCloseTo(5, 1);
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
      expect(tone[0]!.frequency).toBeCloseTo(frequency, 10);
      // 0.4 s of each, as 0.4 f is a whole number here: the upward crossings, of which one is on each seam.
      const periods = tone.filter((out, n) => n > 0 && tone[n - 1]!.force < 0 && out.force >= 0).length;
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
      const [a, b] = [outs[n - 1]!, outs[n]!];
      if (a.frequency === 0 || b.frequency === 0 || a.segment === b.segment) continue;
      const left = Math.ceil(a.phase / (2 * Math.PI) - 1e-9) - a.phase / (2 * Math.PI);
      expect(left / a.frequency + b.phase / (2 * Math.PI * b.frequency)).toBeCloseTo(TP, 12);
    }
  });
});

describe('force pulse', () => {
  it('pushes for its time after each dwell', () => {
    const outs = record({ program: 'force pulse', pulseForce: -20, pulseTime: 0.125, dwell: 0.25 }, 1.5);
    expect(worst(outs, (out, n) => out.force - ((n * TP) % 0.375 >= 0.25 ? -20 : 0))).toBe(0);
    expect(outs.some(({ moving }) => moving)).toBe(false);
    expect(outs.at(-1)!.cycle).toBe(3);
  });

  it('is not missed if it is shorter than a sample', () => {
    const outs = record({ program: 'force pulse', pulseTime: 1e-4, dwell: 0.1 }, 1.1);
    expect(outs.filter(({ force }) => force === 20).length).toBe(10);
  });
});

describe('list', () => {
  it('goes through its lines, each under its own limits', () => {
    const outs = record({ program: 'list' }, 4);
    const end = (k: number) => outs.find(({ segment }) => segment === k)!;
    expect(end(1)).toMatchObject({ position: 0.1, cycle: 0, moving: false });
    expect(end(2)).toMatchObject({ position: 0.1, moving: true });
    // No dwell after the second line: the next cycle begins on its end.
    expect(end(4)).toMatchObject({ position: -0.05, cycle: 1, moving: true });
    const second = outs.filter(({ segment }) => segment === 2);
    expect(Math.min(...second.map(({ speed }) => speed))).toBeCloseTo(-0.2, 14);
    expect(Math.max(...second.map(({ acceleration }) => acceleration))).toBeCloseTo(4, 12);
  });

  it('stays where it is without any line', () => {
    for (const out of record({ program: 'list' }, 1, [])) {
      expect(out).toMatchObject({ position: -0.1, moving: false, segment: 0 });
    }
  });
});

/**
 * Each program of motion against what the parameter table says it does. Where a number is not plain arithmetic, its
 * source stands beside it.
 */
import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { Program } from '../../../workers/command/program.ts';
import { newProgramOutput } from '../../../workers/command/setpoint.ts';
import { firstDifference, MOVES, parameters, record, run, TP, worst } from './recording.ts';

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
    expect(firstDifference(run(axis, 5000), first)).toBeNull();
    expect(at(first, 0).position).toBe(program === 'step' ? -0.1 + 1e-5 : -0.1);
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
      expect(at(outs, n - 1).segment).toBe(finished);
      expect(at(outs, n).segment).toBe(finished + 1);
      expect(outs[n]).toMatchObject({ speed: 0, acceleration: 0, moving: finished % 2 === 1 });
    });
    expect(at(outs, move).position).toBe(0.9);
    expect(at(outs, 2 * move + dwell).position).toBe(-0.1);
    expect(at(outs, 2 * (move + dwell) - 1).cycle).toBe(0);
    expect(at(outs, 2 * (move + dwell)).cycle).toBe(1);
  });

  it('repeats each cycle exactly', () => {
    const length = 2 * (move + dwell);
    const outs = record(slow, 4 * length * TP + 0.1);
    expect(present(outs.at(-1)).cycle).toBe(4);
    const next = outs.slice(length, 4 * length);
    const expected = outs
      .slice(0, 3 * length)
      .map((out) => ({ ...out, cycle: out.cycle + 1, segment: out.segment + 4 }));
    expect(firstDifference(next, expected)).toBeNull();
  });

  it('takes as many samples in every cycle although their times are rounded', () => {
    const axis = new Program(parameters({ ...slow, stroke: 1e-3, dwell: 0.05 }), []);
    const out = newProgramOutput();
    const starts: number[] = [];
    let cycle = -1;
    for (let n = 0; n < 400_000; n++) {
      axis.advance(n * 1e-4, out);
      if (out.cycle > cycle) starts.push(n);
      cycle = out.cycle;
    }
    const lengths = starts.slice(1).map((n, k) => n - at(starts, k));
    expect(lengths.length).toBeGreaterThan(40);
    expect(new Set(lengths).size).toBe(1);
  });

  it('runs the other way with a negative stroke', () => {
    const outs = record({ ...slow, stroke: -1 }, 4);
    expect(at(outs, move).position).toBe(-1.1);
  });

  it('takes new limits at the next segment and a new stroke with them', () => {
    const axis = new Program(parameters(slow), []);
    run(axis, 100);
    axis.setParameters(
      parameters({ ...slow, stroke: 0.5, start: 0, speed: 0.1, acceleration: 100, jerk: 1e5 }),
    );
    const outs = run(axis, 130_000, 100);
    const end = (k: number) => present(outs.find(({ segment }) => segment === k)).position;
    expect([end(1), end(3), end(5), end(7), end(9)]).toEqual([0.9, -0.1, 0, 0.5, 0]);
    const returning = outs.filter(({ segment, moving }) => segment >= 2 && moving);
    expect(Math.max(...returning.map(({ speed }) => Math.abs(speed)))).toBeCloseTo(0.1, 12);
  });

  it('shortens a running dwell at once, or makes it longer', () => {
    const axis = new Program(parameters({ ...slow, dwell: 60 }), []);
    const still = present(run(axis, move + 1000).at(-1));
    expect(still).toMatchObject({ segment: 1, position: 0.9, moving: false });
    axis.setParameters(parameters({ ...slow, dwell: 0.1 }));
    expect(run(axis, 1, move + 1000)[0]).toMatchObject({ segment: 2, position: 0.9, moving: true });

    axis.reset();
    axis.setParameters(parameters({ ...slow, dwell: 0.5 }));
    run(axis, move + 100);
    axis.setParameters(parameters({ ...slow, dwell: 1 }));
    const longer = run(axis, 2 * dwell, move + 100);
    expect(at(longer, 2 * dwell - 101).segment).toBe(1);
    expect(at(longer, 2 * dwell - 100).segment).toBe(2);
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
      worst(outs.slice(1), (out, n) => out[what] - at(outs, n)[what]);
    // The full sine changes at these rates at most; growing from nothing in one period at most a few times as fast.
    expect(change('speed')).toBeLessThan(0.004 * w ** 2 * TP * 2);
    expect(change('acceleration')).toBeLessThan(0.004 * w ** 3 * TP * 2);
    expect(change('jerk')).toBeLessThan(0.004 * w ** 4 * TP * 4);
    expect(Math.abs(at(outs, 1).jerk)).toBeLessThan(0.004 * w ** 4 * TP);
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

  it('states the derivatives of its position while it grows', () => {
    const axis = new Program(parameters(sine), []);
    const h = 1e-5;
    const outs = Array.from({ length: 25_000 }, (_, n) => {
      const out = newProgramOutput();
      axis.advance(n * h, out);
      return out;
    });
    const w = 2 * Math.PI * 4;
    const chain = ['position', 'speed', 'acceleration', 'jerk'] as const;
    for (let k = 0; k < 3; k++) {
      // A central difference errs by h²/6 of the third derivative, for which 10 X ωᵏ⁺³ leaves room.
      const [of, by] = [at(chain, k), at(chain, k + 1)];
      const slope = (n: number) => (at(outs, n + 2)[of] - at(outs, n)[of]) / (2 * h);
      const error = worst(outs.slice(1, -1), (out, n) => slope(n) - out[by]);
      expect(error).toBeLessThan(((h * h) / 6) * 10 * 0.004 * w ** (k + 3) + 1e-9);
    }
  });

  it('changes its frequency without a step of the speed', () => {
    const axis = new Program(parameters(sine), []);
    const before = present(run(axis, 3000).at(-1));
    axis.setParameters(parameters({ ...sine, sineFrequency: 7 }));
    const outs = [before, ...run(axis, 8000, 3000)];
    const w = 2 * Math.PI * 7;
    const change = worst(outs.slice(1), (out, n) => out.speed - at(outs, n).speed);
    expect(change).toBeLessThan(0.004 * w ** 2 * TP * 1.5);
    const last = outs.slice(-Math.ceil(1 / 7 / TP));
    expect(worst(last, ({ speed }) => speed)).toBeCloseTo(0.004 * w, 4);
  });

  it('comes to rest before another frequency, another centre, or another program', () => {
    const axis = new Program(parameters(sine), []);
    run(axis, 3000);
    axis.setParameters(parameters({ ...sine, sineFrequency: 9, start: 0.02 }));
    const outs = run(axis, 3 / TP, 3000);
    // The period in which the change came ends at 0.75 s, the one that dies away at 1 s.
    const outAt = (time: number) => at(outs, Math.round(time / TP) - 3000);
    expect(outAt(1)).toMatchObject({ position: 0, speed: 0, acceleration: 0 });
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
    const stand = (k: number) => present(outs.find(({ segment }) => segment === k));
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
    expect(present(outs.at(-1)).cycle).toBe(2);
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
      .map((out, n) => out.position - at(outs, n).position - out.speed * TP)
      .filter((jump) => Math.abs(jump) > 15e-6);
    expect(jumps.map((jump) => Math.round(jump * 1e6))).toEqual([-20, 100, -100]);
  });
});

describe('list', () => {
  it('goes through its lines, each under its own limits', () => {
    const outs = record({ program: 'list' }, 4);
    const end = (k: number) => present(outs.find(({ segment }) => segment === k));
    expect(end(1)).toMatchObject({ position: 0.1, cycle: 0, moving: false });
    expect(end(2)).toMatchObject({ position: 0.1, moving: true });
    // No dwell after the second line: the next cycle begins on its end.
    expect(end(4)).toMatchObject({ position: -0.05, cycle: 1, moving: true });
    const second = outs.filter(({ segment }) => segment === 2);
    expect(Math.min(...second.map(({ speed }) => speed))).toBeCloseTo(-0.2, 14);
    expect(Math.max(...second.map(({ acceleration }) => acceleration))).toBeCloseTo(4, 12);
  });

  it('stays where it is without any line', () => {
    const outs = record({ program: 'list' }, 1, []);
    expect(outs.length).toBeGreaterThan(0);
    expect(outs.every((out) => out.position === -0.1 && !out.moving && out.segment === 0)).toBe(true);
  });
});

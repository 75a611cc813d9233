/** What happens when people turn knobs: nothing jumps, nothing hangs, nothing is skipped. */
import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { defaultParameters, type Parameters } from '../../../shared/core/parameters/table.ts';
import { seeded } from '../../../shared/core/seeded.ts';
import { Program } from '../../../workers/command/program.ts';
import { newProgramOutput, type ProgramOutput } from '../../../workers/command/setpoint.ts';

const TP = 1 / 4000;
const MOVES = [
  { to: 0.1, speed: 1, acceleration: 10, jerk: 500, dwell: 0.05 },
  { to: -0.05, speed: 0.2, acceleration: 4, jerk: 100, dwell: 0 },
] as const;

const parameters = (changes: Partial<Parameters>): Parameters => ({ ...defaultParameters(), ...changes });

/** Advances from sample `from` and returns the last output. */
function skip(program: Program, count: number, from: number): ProgramOutput {
  const out = newProgramOutput();
  for (let n = from; n < from + count; n++) program.advance(n * TP, out);
  return out;
}

describe('changes at random times', () => {
  // Largest values ever set below; a sine of amplitude X grows by the window w of at most w' = 1.875, w'' = 5.78,
  // w''' = 60 per period.
  const [SPEED, ACCELERATION, JERK] = [2, 20, 2000];
  const [X, W] = [0.002, 2 * Math.PI * 6];
  const F = 6;
  const sineRates = {
    speed: X * (W + 1.875 * F),
    acceleration: X * (W ** 2 + 2 * 1.875 * F * W + 5.78 * F ** 2),
    jerk: X * (W ** 3 + 3 * 1.875 * F * W ** 2 + 3 * 5.78 * F ** 2 * W + 60 * F ** 3),
  };
  const MAX = {
    speed: Math.max(SPEED, sineRates.speed),
    acceleration: Math.max(ACCELERATION, sineRates.acceleration),
    jerk: Math.max(JERK, sineRates.jerk),
  };

  it.each([1, 2, 3, 4, 5, 6, 7, 8])('never make position, speed or acceleration jump (seed %i)', (seed) => {
    const random = seeded(seed);
    const between = (low: number, high: number) => low + (high - low) * random();
    const pick = <T>(options: readonly T[]) => at(options, Math.floor(random() * options.length));
    const change = () =>
      parameters({
        program: pick([
          'hold',
          'shuttle',
          'scan',
          'sine',
          'staircase',
          'chirp',
          'stepped sine',
          'force pulse',
          'list',
        ]),
        start: between(-0.2, 0.2),
        stroke: random() < 0.1 ? 0 : between(-0.2, 0.2),
        speed: between(0.1, SPEED),
        acceleration: between(1, ACCELERATION),
        jerk: between(10, JERK),
        dwell: random() < 0.3 ? 0 : between(0, 0.3),
        scanSpeed: between(0.02, 1),
        sineAmplitude: between(1e-4, X),
        sineFrequency: between(1, F),
        stairStep: between(1e-9, 1e-3),
        stairCount: Math.ceil(between(0, 6)),
        sweepPoints: Math.ceil(between(1, 9)),
        sweepTime: between(0.05, 1),
      });

    const program = new Program(change(), MOVES);
    const last = newProgramOutput();
    const out = newProgramOutput();
    const worst = { dx: 0, dv: 0, da: 0 };
    const seen = new Set<boolean>();
    let countedBack = 0;
    program.advance(0, last);
    for (let n = 1; n < 200_000; n++) {
      if (random() < 0.003) program.setParameters(change());
      program.advance(n * TP, out);
      worst.dx = Math.max(worst.dx, Math.abs(out.position - last.position) / TP / MAX.speed);
      worst.dv = Math.max(worst.dv, Math.abs(out.speed - last.speed) / TP / MAX.acceleration);
      worst.da = Math.max(worst.da, Math.abs(out.acceleration - last.acceleration) / TP / MAX.jerk);
      if (out.cycle < last.cycle || out.segment < last.segment) countedBack++;
      seen.add(out.moving);
      Object.assign(last, out);
    }
    for (const [what, excess] of Object.entries(worst)) {
      expect(excess, what).toBeGreaterThan(0.3);
      expect(excess, what).toBeLessThanOrEqual(1 + 1e-9);
    }
    expect(seen.size).toBe(2);
    expect(countedBack).toBe(0);
  });
});

describe('another program', () => {
  it('waits for the end of a move', () => {
    const program = new Program(parameters({ dwell: 1 }), []);
    skip(program, 100, 0);
    program.setParameters(parameters({ program: 'force pulse', dwell: 0.1, start: 0.1 }));
    // The default shuttle ends its first move at 0.1, which is the start of the new program.
    const out = skip(program, 4000, 100);
    expect(out.position).toBe(0.1);
    expect(out.cycle).toBeGreaterThan(3);
  });

  it('begins at once in a dwell, with a move to its start', () => {
    const program = new Program(parameters({ dwell: 50 }), []);
    expect(skip(program, 4000, 0)).toMatchObject({ position: 0.1, moving: false });
    program.setParameters(parameters({ program: 'chirp', start: 0, dwell: 50 }));
    expect(skip(program, 1, 4000)).toMatchObject({ position: 0.1, moving: true });
    expect(skip(program, 2000, 4001)).toMatchObject({ position: 0, moving: false });
  });

  it('begins at the newest start although it was moved during the approach', () => {
    const program = new Program(parameters({ program: 'hold', start: 0 }), []);
    skip(program, 10, 0);
    program.setParameters(parameters({ start: 0.1, dwell: 0.01 }));
    skip(program, 10, 10);
    program.setParameters(parameters({ start: 0.15, stroke: 0.05, dwell: 0.01 }));
    const out = newProgramOutput();
    const ends: number[] = [];
    for (let n = 20, segment = 1; n < 8000; n++) {
      program.advance(n * TP, out);
      if (out.segment > segment) ends.push(out.position);
      segment = out.segment;
    }
    // To 0.1, as begun; to the newest start; then stroke, dwell, return.
    expect(ends.slice(0, 5).map((x) => Math.round(x * 1000))).toEqual([100, 150, 200, 200, 150]);
  });

  it('ends an injection at once', () => {
    const sweep = { program: 'stepped sine', dwell: 0, sweepTime: 600 } as const;
    const program = new Program(parameters(sweep), []);
    expect(skip(program, 400, 0).frequency).toBe(5);
    program.setParameters(parameters({ program: 'shuttle' }));
    expect(skip(program, 1, 400)).toMatchObject({ force: 0, frequency: 0, position: -0.1, moving: true });
    expect(skip(program, 100, 401).position).toBeGreaterThan(-0.1);
  });
});

describe('after the drive was off', () => {
  it('begins a new cycle from where the table was left', () => {
    const program = new Program(parameters({ program: 'sine', start: 0 }), []);
    const swinging = skip(program, 3000, 0);
    program.resumeFrom(0.03, 3000 * TP);
    const first = skip(program, 1, 3000);
    expect(first).toMatchObject({ position: 0.03, speed: 0, acceleration: 0, moving: true });
    expect(first.cycle).toBe(swinging.cycle);
    // Move to the start (0.164 s at most), then a sine that grows from standstill anew.
    const last = newProgramOutput();
    const out = newProgramOutput();
    program.advance(3001 * TP, last);
    let worst = 0;
    for (let n = 3002; n < 6000; n++) {
      program.advance(n * TP, out);
      worst = Math.max(worst, Math.abs(out.speed - last.speed) / TP);
      Object.assign(last, out);
    }
    expect(worst).toBeLessThanOrEqual(10 * (1 + 1e-9));
    expect(last.cycle).toBeGreaterThan(swinging.cycle);
  });
});

describe('programs that take no time, or for ever', () => {
  it.each(['shuttle', 'scan', 'step'] as const)('%s without stroke and dwell does not hang', (kind) => {
    const program = new Program(parameters({ program: kind, stroke: 0, stepSize: 1e-9, dwell: 0 }), []);
    const out = skip(program, 1000, 0);
    expect(out.cycle).toBeGreaterThanOrEqual(999);
    expect(out.cycle).toBeLessThanOrEqual(1001);
    expect(Math.abs(out.position + 0.1)).toBeLessThanOrEqual(1e-9);
  });

  it('a list of lines to the same place does not hang', () => {
    const line = { to: -0.1, speed: 1, acceleration: 1, jerk: 1, dwell: 0 };
    const program = new Program(parameters({ program: 'list' }), Array(1000).fill(line));
    expect(skip(program, 1001, 0).cycle).toBe(2);
  });

  it('a stroke too short for a sample still takes each move', () => {
    const short = { stroke: 1e-10, jerk: 1e5, acceleration: 200, dwell: 0 };
    const out = skip(new Program(parameters(short), []), 1000, 0);
    expect(out.segment).toBeGreaterThan(1000);
    expect(Math.abs(out.position + 0.1)).toBeLessThanOrEqual(1.0001e-10);
  });

  it('a minute of dwell lasts a minute', () => {
    const program = new Program(parameters({ dwell: 60 }), []);
    // The move of 0.2 m: D/V + V/A + A/J = 0.2 + 0.1 + 0.02 s.
    expect(skip(program, 4000 * 60.32, 0).segment).toBe(1);
    expect(skip(program, 1, 4000 * 60.32).segment).toBe(2);
  });

  it('goes on after a gap in the samples without catching up', () => {
    const program = new Program(parameters({ program: 'sine', start: 0 }), []);
    const before = skip(program, 4000, 0);
    const after = skip(program, 8001, 1e9);
    expect(after.cycle - before.cycle).toBeGreaterThanOrEqual(4);
    expect(after.cycle - before.cycle).toBeLessThanOrEqual(8);
    expect(Math.abs(after.position)).toBeLessThanOrEqual(0.005);
  });
});

it('a limit of zero is named when a move under it begins', () => {
  const program = new Program(parameters({ jerk: 0 }), []);
  expect(() => skip(program, 1, 0)).toThrow(/^jerk must be a positive finite number, got 0$/);
});

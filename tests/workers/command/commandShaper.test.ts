import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import { CommandShaper } from '../../../workers/command/commandShaper.ts';
import { Program } from '../../../workers/command/program.ts';
import { newProgramOutput, type ProgramOutput } from '../../../workers/command/setpoint.ts';
import { firstDifference, parameters, worst } from './recording.ts';

/** Period of the position loop at the rates of `shuttle`, s. */
const PERIOD = 1 / 8000;

/** Moves of 100 mm there and back: 0.22 s of motion, 0.3 s of dwell. */
const shuttle = (changes: ParameterChanges = {}) =>
  parameters({
    program: 'shuttle',
    start: -0.05,
    stroke: 0.1,
    dwell: 0.3,
    currentRate: 16_000,
    positionDivider: 2,
    ...changes,
  });

interface Both {
  readonly command: ProgramOutput[];
  readonly set: ProgramOutput[];
}

/** Program and shaped command; `changeAt(n)` gives the parameters of a sample where they change. */
function shaped(
  p: Parameters,
  seconds: number,
  changeAt: (n: number) => Parameters | undefined = () => undefined,
): Both {
  const program = new Program(p, []);
  const shaper = new CommandShaper(p);
  const both: Both = { command: [], set: [] };
  for (let n = 0; n < seconds / PERIOD; n++) {
    const changed = changeAt(n);
    if (changed) shaper.setParameters(changed);
    const [command, set] = [newProgramOutput(), newProgramOutput()];
    program.advance(n * PERIOD, command);
    shaper.step(command, set);
    both.command.push(command);
    both.set.push(set);
  }
  return both;
}

/** Samples of the first move, from its start to the sample at which the signal has come to rest. */
const movingTime = (outs: readonly ProgramOutput[]) =>
  outs.findIndex((out, n) => n > 0 && !out.moving) * PERIOD;

describe('shaping of the command', () => {
  it('passes an unshaped command bit by bit', () => {
    const { command, set } = shaped(shuttle(), 0.8);
    expect(firstDifference(set, command)).toBeNull();
  });

  it.each([
    { jerkRamp: 0.02 },
    { jerkRamp: 0.020_03 },
    { shaper: 'ZVD', shaperFrequency: 37, shaperDamping: 0.05 },
    { setpointFilter: 0.004 },
    { jerkRamp: 0.01, shaper: 'ZV', setpointFilter: 0.001 },
  ] as const)('%o: speed and acceleration are the derivatives of the position', (changes) => {
    const { set } = shaped(shuttle(changes), 0.6);
    const difference = (n: number, of: (out: ProgramOutput) => number) =>
      n === 0 || n === set.length - 1 ? null : (of(at(set, n + 1)) - of(at(set, n - 1))) / (2 * PERIOD);
    // Central differences of a third-order profile err by j T²/6, and by a j T/4 where the jerk jumps.
    expect(worst(set, ({ speed }, n) => (difference(n, (o) => o.position) ?? speed) - speed)).toBeLessThan(
      5e-6,
    );
    expect(
      worst(set, ({ acceleration }, n) => (difference(n, (o) => o.speed) ?? acceleration) - acceleration),
    ).toBeLessThan(0.04);
  });

  it.each([{ jerkRamp: 0.02 }, { shaper: 'ZVDD', shaperFrequency: 50 }, { setpointFilter: 0.002 }] as const)(
    '%o: comes to rest on the target exactly',
    (changes) => {
      const { command, set } = shaped(shuttle(changes), 0.51);
      expect(at(command, command.length - 1).position).toBe(0.05);
      expect(at(set, set.length - 1)).toMatchObject({
        position: 0.05,
        speed: 0,
        acceleration: 0,
        moving: false,
      });
    },
  );

  it('a jerk ramp of 20 ms takes 20 ms, and the jerk no longer jumps', () => {
    const { command, set } = shaped(shuttle({ jerkRamp: 0.02 }), 0.55);
    expect(movingTime(set) - movingTime(command)).toBeCloseTo(0.02, 3);
    const jump = (outs: readonly ProgramOutput[]) =>
      worst(outs, ({ jerk }, n) => jerk - (n === 0 ? 0 : at(outs, n - 1).jerk));
    // From a jump of at least the whole jerk to one sample's share of twice the jerk.
    expect(jump(command)).toBeGreaterThanOrEqual(500);
    expect(jump(set)).toBeLessThanOrEqual((2 * 500 * PERIOD) / 0.02 + 1e-6);
  });

  it('a ZV shaper of 25 Hz takes half a period, 20 ms', () => {
    const { command, set } = shaped(shuttle({ shaper: 'ZV', shaperFrequency: 25, shaperDamping: 0 }), 0.55);
    expect(movingTime(set) - movingTime(command)).toBeCloseTo(0.02, 3);
  });

  it('other shaping waits for a standstill: the setpoint never jumps', () => {
    const before = shuttle({ jerkRamp: 0.02 });
    const after = shuttle({ shaper: 'ZVD', shaperFrequency: 30 });
    const changed = Math.round(0.1 / PERIOD);
    const { set } = shaped(before, 1.2, (n) => (n === changed ? after : undefined));
    const unchanged = shaped(before, 0.5).set;
    expect(firstDifference(set.slice(0, unchanged.length), unchanged)).toBeNull();
    expect(
      worst(set, ({ position }, n) => position - (n === 0 ? -0.05 : at(set, n - 1).position)),
    ).toBeLessThan(1.01 * PERIOD);
    // The second move, back to the start, is that of the new shaping.
    const fresh = shaped(after, 1.2).set;
    const second = Math.round(0.6 / PERIOD);
    expect(at(set, second)).toEqual(at(fresh, second));
  });

  it('an injected force passes at once', () => {
    const p = shuttle({ program: 'force pulse', pulseForce: 20, dwell: 0.05, jerkRamp: 0.1 });
    const { command, set } = shaped(p, 0.3);
    expect(set.map(({ force }) => force)).toEqual(command.map(({ force }) => force));
    expect(worst(command, ({ force }) => force)).toBe(20);
  });
});

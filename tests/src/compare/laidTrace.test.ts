import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import type { Trace } from '../../../shared/protocol/trace.ts';
import { Ghost } from '../../../src/compare/ghost.ts';
import { laidTrace } from '../../../src/compare/laidTrace.ts';
import { traceError } from '../../../src/compare/traceError.ts';

const scene = DEFAULT_SCENE;
const period = 1e-3;

/** Stands for 50 ms, then moves at 1 m/s; lags by 10 µm. */
function trace(): Trace {
  const setpoint = Float64Array.from({ length: 400 }, (_, k) => Math.max(0, k - 50) * period);
  return {
    period,
    start: 3,
    position: setpoint.map((x) => x - 1e-5),
    setpoint,
    current: null,
    currentCommand: null,
    motorPosition: null,
    tablePosition: null,
    gaps: [],
    resampled: 'as recorded',
  };
}

it('begins where its motion does, wherever a cycle of the run begins', () => {
  const laid = laidTrace(trace(), scene);
  expect(laid.from).toBeCloseTo(3.05, 3);
  const ghost = new Ghost(laid);
  ghost.align([
    { index: 0, start: 10, figures: null },
    { index: 1, start: 10.5, figures: null },
    { index: 2, start: 11, figures: null },
  ]);
  const [lows, highs] = [new Float64Array(4), new Float64Array(4)];
  ghost.columns('setpoint', 11, 11.04, 4, lows, highs);
  expect(lows[0]).toBeCloseTo(0, 2);
  expect(highs[3]).toBeCloseTo(0.04, 2);
  ghost.columns('followingError', 11, 11.04, 4, lows, highs);
  expect(highs[2]).toBeCloseTo(1e-5, 9);
});

it('knows its following error from its first motion to its end, gaps left out', () => {
  const given = trace();
  // Before the motion, and in a gap: neither counts.
  given.position[3] = 1;
  given.position.fill(Number.NaN, 200, 210);
  given.position[300] = at(present(given.setpoint), 300) + 5e-5;
  const error = present(traceError(given, laidTrace(given, scene).from));
  expect(error.peakError).toBeCloseTo(5e-5, 12);
  // 350 samples from the last one at rest, less the ten; all but one of 10 µm, that one of 50 µm.
  expect(error.seconds).toBeCloseTo(0.34, 9);
  expect(error.rmsError).toBeCloseTo(Math.sqrt((339 * 1e-5 ** 2 + 5e-5 ** 2) / 340), 12);
  expect(traceError({ ...given, setpoint: null }, 3)).toBeNull();
});

it('draws nothing of what was not measured', () => {
  const ghost = new Ghost(laidTrace(trace(), scene));
  ghost.align([{ index: 0, start: 0, figures: null }]);
  const [lows, highs] = [new Float64Array(4), new Float64Array(4)];
  ghost.columns('forceCurrent', 0, 0.04, 4, lows, highs);
  expect([...lows, ...highs].every(Number.isNaN)).toBe(true);
});

import { expect, it } from 'vitest';
import { DEFAULT_SCENE, sceneById } from '../../../scenes/index.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { cycleDuration } from '../../../shared/motion/cycle.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';
import { timeLapse } from '../../../workers/timelapse/timeLapse.ts';
import { steadyCycle } from '../../../workers/tolerance/leadIn.ts';
import { measureMachine } from '../../../workers/tolerance/measureMachine.ts';

const changed = (scene: Scene, changes: ParameterChanges): Scene => ({
  ...scene,
  parameters: { ...scene.parameters, ...changes },
});

it('finds what a run of the reference engine finds in the same cycle', () => {
  const cycle = cycleDuration(DEFAULT_SCENE.parameters, DEFAULT_SCENE.moves);
  const run = measureRun(DEFAULT_SCENE, cycle);
  const { figures, trip, holds } = measureMachine(DEFAULT_SCENE, 0);
  expect({ trip, holds }).toEqual({ trip: null, holds: true });
  expect(run.moves).toHaveLength(2);
  expect(figures.settlingTime).toBeCloseTo(run.settlingTime ?? Number.NaN, 3);
  expect((figures.peakError ?? 0) / run.peakFollowingError).toBeCloseTo(1, 3);
  expect((figures.rmsError ?? 0) / run.rmsFollowingError).toBeCloseTo(1, 2);
  expect((figures.peakCurrent ?? 0) / run.peakCurrent).toBeCloseTo(1, 3);
});

it.each(['mould-shuttle', 'four-motors-one-misaligned'])(
  '%s: the winding ends where the time-lapse ends it',
  (id) => {
    const scene = sceneById(id);
    const { steady } = timeLapse(scene, { hours: 1, growthTarget: null }).asSet;
    const found = measureMachine(scene, 0).figures.windingTemperature ?? Number.NaN;
    expect(Math.abs(found - (steady?.windingPeak ?? Number.NaN))).toBeLessThan(0.1);
  },
);

it('leaves out no cycle where the axis starts at rest, and some where its base swings', () => {
  expect(steadyCycle(DEFAULT_SCENE).leadIn).toBe(0);
  const softer = changed(sceneById('soft-base'), { baseFrequency: 4, dwell: 0.1 });
  expect(steadyCycle(softer).leadIn).toBeGreaterThan(0);
});

it('moves of the cycles that are left out do not count', () => {
  const scene = sceneById('soft-base');
  const { moves } = measureRun(scene, 2 * cycleDuration(scene.parameters, scene.moves));
  const settled = moves.map(({ settlingTime }) => settlingTime ?? Number.NaN);
  expect(settled).toHaveLength(4);
  // The cycle that the axis starts with is another one.
  const [first, second] = [Math.max(...settled.slice(0, 2)), Math.max(...settled.slice(2))];
  expect(first - second).toBeGreaterThan(1e-3);
  expect(measureMachine(scene, 0).figures.settlingTime).toBeCloseTo(first, 3);
  expect(measureMachine(scene, 1).figures.settlingTime).toBeCloseTo(second, 3);
});

it('a machine that trips has no figures, one that stays outside its window no settling time', () => {
  expect(measureMachine(changed(DEFAULT_SCENE, { followingErrorLimit: 2e-6 }), 0)).toMatchObject({
    trip: 'following error',
    figures: { settlingTime: null, peakError: null },
  });
  const { trip, figures } = measureMachine(changed(DEFAULT_SCENE, { dwell: 0.02 }), 0);
  expect(trip).toBeNull();
  expect(figures.settlingTime).toBeNull();
  expect(figures.peakError).toBeGreaterThan(0);
});

it('a program without an end is measured for a second', () => {
  const { figures } = measureMachine(changed(DEFAULT_SCENE, { program: 'hold' }), 0);
  expect(figures.peakError).toBeLessThan(1e-7);
  expect(figures.settlingTime).toBeNull();
});

it('a drive that goes by the datasheet of a motor with weaker magnets is one with gains that are lower by as much', () => {
  const { Kp, Ki, Kd, speedFeedforward, accelerationFeedforward, forceConstant } = DEFAULT_SCENE.parameters;
  const gains = { Kp, Ki, Kd, speedFeedforward, accelerationFeedforward, forceConstant };
  const lower = Object.fromEntries(Object.entries(gains).map(([name, value]) => [name, 0.9 * value]));
  const weak = measureMachine(changed(DEFAULT_SCENE, { fluxDeviation: -0.1 }), 0).figures;
  const known = measureMachine(changed(DEFAULT_SCENE, lower), 0).figures;
  // Not to the last digit: the back-EMF feedforward goes by the datasheet, too.
  for (const name of ['settlingTime', 'peakError', 'rmsError', 'peakCurrent', 'windingTemperature'] as const)
    expect(Math.abs((weak[name] ?? 0) / (known[name] ?? 1) - 1)).toBeLessThan(0.02);
  const { peakCurrent } = measureMachine(DEFAULT_SCENE, 0).figures;
  expect((weak.peakCurrent ?? 0) / (peakCurrent ?? 1)).toBeCloseTo(1 / 0.9, 1);
});

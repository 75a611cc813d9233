import { describe, expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import { crossChecks } from '../../../shared/core/crossChecks.ts';
import { PARAMETERS, type Parameters } from '../../../shared/core/parameters/table.ts';
import { taskOf } from '../../../workers/pretune/task.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';
import { shelfScene } from '../../scenes/runs.ts';
import { bareScene } from '../model/sceneOf.ts';

describe.each(SCENES)('the task of $id', (scene) => {
  const task = taskOf(scene);

  it('is a legal scene with the drive on', () => {
    const p = task.scene.parameters;
    expect(p.drive).toBe('on');
    expect(checkParameters(p, p).problems).toEqual([]);
    expect(crossChecks(p)).toEqual([]);
  });

  it('is short, and says what is judged', () => {
    expect(task.seconds).toBeLessThan(4);
    expect(task.from).toBeLessThan(task.seconds);
    expect(task.judged).toContain(task.figure);
  });
});

describe('a task', () => {
  it('takes in both moves of a shuttle with their dwells, and no third one', () => {
    const { scene, seconds } = taskOf(shelfScene('mould-shuttle'));
    const { moves } = measureRun(scene, seconds - 1 / scene.parameters.currentRate);
    expect(moves).toHaveLength(2);
    expect(measureRun(scene, seconds + 0.01).moves).toHaveLength(3);
  });

  it('takes another window', () => {
    expect(taskOf(shelfScene('mould-shuttle'), 2e-7).scene.parameters.window).toBe(2e-7);
    expect(taskOf(shelfScene('mould-shuttle'), 2e-7).judged).toContain('200 nm');
  });

  it.each(PARAMETERS.program.options)('can be made of the program %s', (program) => {
    const task = taskOf(bareScene({ program: program as Parameters['program'] }));
    const { trip } = measureRun(task.scene, task.seconds);
    expect(trip).toBeNull();
  });

  it('says so when a shuttle stands in for what cannot be judged', () => {
    expect(taskOf(shelfScene('free-pull-iron')).judged).toMatch(/drive is off.*as if it were on.*50\.0 mm/);
    expect(taskOf(bareScene({ program: 'hold' })).judged).toContain('program hold makes no moves');
  });

  it('moves to the side where there is room', () => {
    const task = taskOf(bareScene({ program: 'hold', start: 0.29 }));
    expect(task.scene.parameters.stroke).toBeLessThan(0);
    expect(crossChecks(task.scene.parameters)).toEqual([]);
  });

  it('takes as many moves of a list as fit in its time', () => {
    const limits = { speed: 1, acceleration: 10, jerk: 500 };
    const moves = [
      { to: 0.1, ...limits, dwell: 2 },
      { to: 0, ...limits, dwell: 2 },
    ];
    expect(taskOf({ ...bareScene({ program: 'list' }), moves }).seconds).toBeLessThan(3);
  });

  // 0.2 m at 1 m/s, 10 m/s² and 500 m/s³: 0.2/1 + 1/10 + 10/500 s. Minutes of standstill are not waited for.
  it.each(['shuttle', 'list'] as const)(
    'of a %s that stands for a minute is one move with its end',
    (program) => {
      const limits = { speed: 1, acceleration: 10, jerk: 500 };
      const moves = [0, 0.2, 0].map((to) => ({ to, ...limits, dwell: to > 0 ? 60 : 2.5 }));
      const task = taskOf({ ...bareScene({ program, ...limits, start: 0, stroke: 0.2, dwell: 60 }), moves });
      const wait = program === 'list' ? 2.5 : 0;
      expect(task.seconds).toBeCloseTo(wait + 0.32 + 1, 3);
      const { moves: made } = measureRun(task.scene, task.seconds);
      // A line of a list that leads nowhere takes no time to make.
      expect(made.filter(({ peakError }) => peakError > 0)).toHaveLength(1);
      expect(present(made.at(-1)).settlingTime).not.toBeNull();
    },
  );
});

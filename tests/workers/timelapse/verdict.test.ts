import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { coolingSentences } from '../../../shared/figures/timeLapseText.ts';
import { cycleSpan } from '../../../workers/timelapse/cycleSpan.ts';
import { timeLapse } from '../../../workers/timelapse/timeLapse.ts';
import { DUTIES } from '../../benchmarks/lapse/duties.ts';
import { bareScene } from '../model/sceneOf.ts';
import { withChanges } from './fullModel.ts';
import { hot, targets, text, told } from './hotDuty.ts';

describe('what cooling has to do', () => {
  const cooling = present(timeLapse(hot, targets).cooling);
  const [winding, growth] = [at(cooling.targets, 0), at(cooling.targets, 1)];

  it('is judged by the strictest target, and said so', () => {
    expect(present(growth.coolant).temperature).toBeLessThan(present(winding.coolant).temperature);
    expect(cooling.heat).toBe(present(growth.coolant).heat);
    expect(cooling.chillerNeeded).toBe(true);
    const sentences = coolingSentences(hot.parameters, cooling).map(text);
    expect(sentences).toHaveLength(3);
    expect(sentences[2]).toMatch(/^A chiller for \d+ W is needed/);
  });

  it('needs none where air will do', () => {
    const mild = timeLapse(hot, { hours: 0.1, windingTarget: 120, growthTarget: 1e-3 });
    const none = present(mild.cooling);
    expect(none.targets.map(({ coolant }) => coolant)).toEqual([null, null]);
    expect([none.chillerNeeded, none.heat, none.outOfReach]).toEqual([false, 0, []]);
    expect(coolingSentences(hot.parameters, none).map(text).at(-1)).toBe(
      'Neither a coolant nor a chiller is needed.',
    );
  });

  it('needs a coolant but no chiller where one as warm as the room is cold enough', () => {
    const nearAir = { hours: 0.1, windingTarget: present(winding.inAir) - 1, growthTarget: 1e-3 };
    const found = present(timeLapse(hot, nearAir).cooling);
    expect(found.chillerNeeded).toBe(false);
    expect(found.heat).toBeGreaterThan(0);
    expect(coolingSentences(hot.parameters, found).map(text).at(-1)).toMatch(
      /^A coolant for \d+ W is needed, but no chiller: as warm as the room, .+ °C, it is cold enough\.$/,
    );
  });

  it('cannot be done at the motor for a screw that heats itself', () => {
    const { cooling: screw } = timeLapse(DUTIES.screw, { hours: 0.1, growthTarget: 5e-6 });
    expect(present(screw).outOfReach).toEqual(['growth']);
  });
});

describe('whether the axis can do its duty', () => {
  it('can: no limit is near', () => {
    const { duty } = timeLapse(DUTIES.tubular, { hours: 8 });
    expect(duty.reasons).toEqual([]);
    expect(duty.canDo).toBe(true);
  });

  it('cannot: the cycle does not run even cold', () => {
    const lapse = timeLapse(withChanges(hot, { followingErrorLimit: 1e-7 }), { hours: 1 });
    expect(lapse.asSet.trip).toMatchObject({ kind: 'following error', time: 0 });
    expect(lapse.asSet.samples).toEqual([]);
    expect([lapse.asSet.steady, lapse.cooling]).toEqual([null, null]);
    expect(told(lapse.duty)[0]).toMatch(/^In the first cycle the drive trips/);
  });
});

describe('the cycle that is measured', () => {
  const seconds = (scene: Scene) =>
    (cycleSpan(scene).measure * scene.parameters.positionDivider) / scene.parameters.currentRate;

  it('is a whole one: a sine of 2 Hz is measured for two periods', () => {
    expect(seconds(bareScene({ program: 'sine', sineFrequency: 2 }))).toBeCloseTo(1, 3);
  });

  it('is there and back, with both dwells', () => {
    // 0.2 m at 1 m/s, 10 m/s², jerk 500 m/s³: v/a + a/j more than s/v. Biagiotti & Melchiorri 2008, ch. 3.
    const scene = bareScene({ stroke: 0.2, speed: 1, acceleration: 10, jerk: 500, dwell: 0.4 });
    expect(seconds(scene)).toBeCloseTo(2 * (0.2 + 1 / 10 + 10 / 500 + 0.4), 3);
  });

  it('of a list goes from its last line to its first', () => {
    const line = (to: number) => ({ to, speed: 1, acceleration: 10, jerk: 500, dwell: 0.5 });
    const scene = { ...bareScene({ program: 'list', start: 0 }), moves: [line(0.1), line(-0.1)] };
    expect(seconds(scene)).toBeCloseTo(2 * (0.2 + 1 / 10 + 10 / 500 + 0.5), 3);
  });

  it('is a second, or a period of the process, where nothing moves', () => {
    expect(seconds(bareScene({ program: 'hold' }))).toBe(1);
    expect(seconds(bareScene({ program: 'list' }))).toBe(1);
    expect(seconds(bareScene({ program: 'hold', process: 'sine', processFrequency: 0.4 }))).toBe(2.5);
  });

  // What the cycle takes does not depend on where it is begun.
  it('of a minute is measured from five seconds on, once', () => {
    const scene = bareScene({
      stroke: 0.2,
      speed: 1,
      acceleration: 10,
      jerk: 500,
      dwell: 30,
      currentRate: 4000,
    });
    const { settle, measure } = cycleSpan(scene);
    const rate = 4000 / scene.parameters.positionDivider;
    expect(settle / rate).toBeCloseTo(5, 9);
    expect(measure / rate).toBeCloseTo(2 * (0.2 + 1 / 10 + 10 / 500 + 30), 2);
  });

  it('must not be too long', () => {
    const crawl = bareScene({ program: 'scan', scanSpeed: 1e-5, stroke: 0.1, currentRate: 4000 });
    expect(() => cycleSpan(crawl)).toThrow(/program: a cycle of the scan takes longer than 5 minutes/);
  });
});

import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { chooseCandidates } from '../../../shared/sizing/chooseCandidates.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { defaultJobValues, type Job } from '../../../shared/study/job.ts';
import { Arrivals } from '../../../src/sideBySide/arrivals.ts';
import { CommonClock } from '../../../src/sideBySide/commonClock.ts';

/** Moves of 0.4 s, each with 0.2 s of dwell after it: arrivals at 0.4 s, 1.0 s, 1.6 s … */
const JOB: Job = {
  title: '',
  values: { ...defaultJobValues(), stroke: 0.25, moveTime: 0.4, dwell: 0.2 },
  moves: [],
};
const scene = () => candidateScene(JOB, at(chooseCandidates(JOB, PRESETS), 0), PRESETS);

describe('the arrivals of a job', () => {
  it('come at the end of each move, round after round', () => {
    const arrivals = new Arrivals(scene());
    for (const round of [0, 1, 2, 50, 51]) {
      const arrival = 0.4 + 0.6 * round;
      const span = present(arrivals.at(arrival - 0.1));
      expect(span.from).toBeGreaterThan(arrival - 0.03);
      expect(span.from).toBeLessThan(arrival - 0.01);
      expect(span.to).toBeGreaterThan(arrival + 0.05);
      expect(arrivals.at(arrival)).toEqual(span);
    }
  });

  it('of several programs count from whichever comes first, also within the span of another', () => {
    const soon = scene();
    const late = { ...soon, parameters: { ...soon.parameters, dwell: 0.5 } };
    const programs = [new Arrivals(late), new Arrivals(soon)];
    const spanAt = (time: number) => present(Arrivals.first(programs, time));
    // At 0.4 s both arrive; then one at 1.0 s, the other at 1.3 s.
    expect(spanAt(0.1).from).toBeCloseTo(0.38, 2);
    expect(spanAt(0.7).from).toBeCloseTo(0.98, 2);
    expect(spanAt(1.2).from).toBeCloseTo(1.28, 2);
    expect(Arrivals.first([], 0.1)).toBeNull();
  });

  it('slow the clock from just before them until after them, if asked to, and nowhere else', () => {
    const arrivals = new Arrivals(scene());
    const secondsTo = (time: number, slows: boolean) => {
      const clock = new CommonClock();
      clock.slowsAtArrivals = slows;
      clock.run();
      let seconds = 0;
      for (; clock.time < time; seconds += 0.01)
        clock.advance(0.01, [{ time: clock.time, tripped: false }], arrivals.at(clock.time));
      return { seconds, lost: clock.lost };
    };
    expect(secondsTo(0.37, true).seconds).toBeCloseTo(0.37, 1);
    expect(secondsTo(0.6, false).seconds).toBeCloseTo(0.6, 1);
    // 0.02 s before and 0.08 s after the arrival take twenty times as long.
    const { seconds, lost } = secondsTo(0.6, true);
    expect(seconds).toBeGreaterThan(0.5 + 20 * 0.1 - 0.1);
    expect(seconds).toBeLessThan(0.5 + 20 * 0.1 + 0.1);
    expect(lost).toBeLessThan(0.02);
  });
});

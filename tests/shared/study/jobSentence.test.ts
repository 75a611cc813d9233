import { describe, expect, test } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { moveLimits } from '../../../shared/motion/moveLimits.ts';
import { defaultJobValues, type Job, type JobValues } from '../../../shared/study/job.ts';
import { jobSentence } from '../../../shared/study/jobSentence.ts';
import { motionAsked } from '../../../shared/study/motionAsked.ts';

const values: JobValues = {
  ...defaultJobValues(),
  payload: 5,
  stroke: 0.25,
  moveTime: 0.4,
  dwell: 0.15,
  window: 1e-6,
  rippleLimit: 0.001,
  growthLimit: 5e-6,
};
const job: Job = { title: 'Shuttle a mould', values, moves: [] };
const withValues = (changes: Partial<JobValues>): Job => ({ ...job, values: { ...values, ...changes } });

// The one-third trapezoid by hand: v = 1.5 s/t = 0.9375 m/s, a = 6 s/t² = 9.375 m/s².
describe('the motion that is asked for', () => {
  const asked = motionAsked(job);

  test('takes its time and meets its limits', () => {
    expect(asked.cycleTime).toBeCloseTo(1.1, 9);
    expect(asked.topSpeed).toBeCloseTo(0.9375, 9);
    expect(asked.topAcceleration).toBeCloseTo(9.375, 9);
  });

  test('goes there and back without a jump', () => {
    expect(Math.max(...asked.position)).toBeCloseTo(0.125, 12);
    expect(Math.min(...asked.position)).toBeCloseTo(-0.125, 12);
    expect(asked.position[0]).toBe(asked.position.at(-1));
    for (let k = 1; k < asked.time.length; k++) {
      const step = at(asked.time, k) - at(asked.time, k - 1);
      expect(step).toBeGreaterThanOrEqual(0);
      expect(Math.abs(at(asked.position, k) - at(asked.position, k - 1))).toBeLessThanOrEqual(
        asked.topSpeed * step + 1e-12,
      );
    }
  });

  test('of a list begins where the list ends, and its limits need not be reached', () => {
    const list = {
      ...withValues({ motion: 'move list' }),
      moves: [
        { to: 0.1, ...moveLimits(0.2, 0.5), dwell: 0.1 },
        { to: -0.1, speed: 6, acceleration: 4, jerk: 1e5, dwell: 0 },
      ],
    };
    const { moves, topAcceleration, topSpeed } = motionAsked(list);
    expect(moves[0]).toMatchObject({ from: -0.1, to: 0.1, begin: 0, dwell: 0.1 });
    expect(at(moves, 0).time).toBeCloseTo(0.5, 9);
    // Nearly a triangle of speed: √(s a) on top, at the full acceleration.
    expect(topSpeed).toBeCloseTo(Math.sqrt(0.2 * 4), 3);
    expect(topAcceleration).toBeCloseTo((6 * 0.2) / 0.5 ** 2, 9);
  });
});

describe('a job said back', () => {
  // Two moves in 1.1 s are 109 per minute and 6545 per hour.
  test('in millimetres', () => {
    expect(jobSentence(job, 'metric')).toBe(
      'Carry 5 kg over 250 mm in 400 ms, arrive within ±1 µm, dwell for 150 ms, and return. ' +
        'That is 109 moves per minute, 6\u202f550 per hour, with up to 0.938 m/s and 9.38 m/s². ' +
        'It scans 200 mm at 100 mm/s with no more than 0.1 % of ripple up to 100 Hz, and runs 8 h a day on 250 days a year with no more than ' +
        '5 µm of thermal drift at the tool.',
    );
  });

  // 1 in = 25.4 mm, 1 lb = 0.45359237 kg: NIST SP 811, 2008, app. B.
  test('in inches', () => {
    const said = jobSentence(withValues({ stroke: 0.254, payload: 2.26796185, window: 25.4e-9 }), 'inch');
    expect(said).toMatch(/^Carry 5 lb over 10 in in 400 ms, arrive within ±1 µin, /);
    expect(said).toContain('with up to 37.5 in/s and 375 in/s²');
  });

  test.each<[Partial<JobValues>, RegExp]>([
    [{ payload: 0 }, /^Move the empty table over/],
    [{ dwell: 0 }, /and return at once\./],
    [
      { inclination: Math.PI / 2, counterbalanced: 0.9 },
      /, straight up and down with 90 % of the weight counterbalanced\./,
    ],
    [{ inclination: -Math.PI / 6 }, /, on a slope of 30°\./],
  ])('%o', (changes, said) => {
    expect(jobSentence(withValues(changes), 'metric')).toMatch(said);
  });

  test('of a list', () => {
    const moves = [0.1, -0.1].map((to) => ({ to, ...moveLimits(0.2, 0.5), dwell: 0 }));
    expect(jobSentence({ ...withValues({ motion: 'move list' }), moves }, 'metric')).toMatch(
      /^Carry 5 kg through a list of 2 moves in 1 s, arrive within ±1 µm\. That is 120 moves per minute/,
    );
  });

  test('what is left open is said to be', () => {
    const open = jobSentence(withValues({ rippleLimit: 0, growthLimit: 0 }), 'metric');
    expect(open).toMatch(
      /It runs 8 h a day on 250 days a year\. A scan and a limit of thermal drift are not required\.$/,
    );
    expect(jobSentence(withValues({ growthLimit: 0 }), 'metric')).toMatch(
      /A limit of thermal drift is not required\.$/,
    );
  });
});

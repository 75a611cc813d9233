import { describe, expect, it } from 'vitest';
import { KITS } from '../../scenes/index.ts';
import { FORMS } from '../../shared/scene.ts';
import { chooseLanes } from '../../shared/sizing/chooseLanes.ts';
import { classNote } from '../../shared/sizing/classNote.ts';
import { classForce } from '../../shared/sizing/driveClass.ts';
import { sizeLane } from '../../shared/sizing/sizeLane.ts';
import { defaultJobValues, type Job, type JobValues } from '../../shared/study/job.ts';
import type { LaneChoice } from '../../shared/study/lane.ts';
import { laneScene } from '../../shared/study/laneScene.ts';

const jobOf = (changes: Partial<JobValues> = {}): Job => ({
  title: 'Shuttle',
  values: { ...defaultJobValues(), ...changes },
  moves: [],
});

const forms = (lanes: readonly LaneChoice[]) => lanes.map(({ kit }) => KITS[kit]!.form);
const forces = (lanes: readonly LaneChoice[]) => lanes.map((lane) => classForce(lane, KITS));
const passes = (job: Job, lane: LaneChoice) => sizeLane(job, laneScene(job, lane, KITS)).passes;

describe('comparable drives', () => {
  it('are the four of the scenes for the default job', () => {
    const lanes = chooseLanes(jobOf(), KITS);
    expect(lanes.map(({ kit }) => kit)).toEqual(FORMS);
    expect(lanes.map(({ motorCount }) => motorCount)).toEqual([1, 1, 1, 1]);
    expect(classNote(lanes, KITS)).toBe(
      'Comparable drives: their continuous force is the same, 300 N. Payload and job are the same for all.',
    );
  });

  it.each([
    { payload: 25 },
    { payload: 60 },
    { payload: 100 },
    { inclination: Math.PI / 2, payload: 30 },
    { moveTime: 0.25 },
    { moveTime: 1.5, payload: 0.5 },
  ])('follow the job: %o', (changes) => {
    const job = jobOf(changes);
    const lanes = chooseLanes(job, KITS);
    expect(forms(lanes)).toEqual(FORMS);
    const all = forces(lanes);
    expect(Math.max(...all) / Math.min(...all)).toBeLessThan(1.15);
    // The linear motors do all of these.
    for (const lane of lanes.slice(0, 3)) expect(passes(job, lane), lane.kit).toBe(true);
    for (const { kit, motorCount } of lanes) {
      expect(motorCount).toBeLessThanOrEqual(KITS[kit]!.form === 'screw' ? 1 : 4);
    }
  });

  it('are no larger than they have to be', () => {
    const heavy = jobOf({ payload: 100 });
    const [force] = forces(chooseLanes(heavy, KITS));
    expect(force).toBeGreaterThan(300);
    for (const smaller of [300, 600].filter((each) => each < force!)) {
      const lane = { kit: 'flat', motorCount: smaller / 300, own: {}, gains: null };
      const screw = { kit: 'screw-600', motorCount: 1, own: {}, gains: null };
      expect(passes(heavy, lane) && passes(heavy, screw)).toBe(false);
    }
  });

  it('show a form that cannot do the job', () => {
    const job = jobOf({ stroke: 2, travel: 2.2, moveTime: 1.5 });
    const lanes = chooseLanes(job, KITS);
    expect(forms(lanes)).toEqual(FORMS);
    expect(passes(job, lanes[3]!)).toBe(false);
  });

  it('keep the smallest of a form that has none of the class, and the note says so', () => {
    const { flat: _, 'flat-600': __, ...others } = KITS;
    const lanes = chooseLanes(jobOf(), others);
    expect(lanes.map(({ kit }) => kit)).toEqual(['tubular-150', 'u-channel-150', 'flat-1200', 'screw-160']);
    expect(classNote(lanes, KITS)).toBe(
      'Not all of one class: A, B, D have a continuous force of 150 N to 160 N; C has 1.20 kN, 8.0 times as much. Payload and job are the same for all.',
    );
    expect(chooseLanes(jobOf(), {})).toEqual([]);
  });
});

describe('the note on the class', () => {
  const lane = (kit: string, motorCount = 1, own: LaneChoice['own'] = {}): LaneChoice => ({
    kit,
    motorCount,
    own,
    gains: null,
  });

  it('tells how much stronger an odd one is, own datasheets counted', () => {
    expect(classNote([lane('tubular-150', 2), lane('u-channel'), lane('flat-600')], KITS)).toBe(
      'Not all of one class: A, B have a continuous force of 300 N; C has 600 N, twice as much. Payload and job are the same for all.',
    );
    expect(classNote([lane('tubular'), lane('flat', 1, { continuousForce: 450 })], KITS)).toMatch(
      /B has 450 N, 1\.5 times as much/,
    );
    expect(classNote([lane('screw-600'), lane('screw-640-fine')], KITS)).toMatch(/the same within 6\.7 %/);
    expect(classNote([lane('tubular')], KITS)).toBe('');
  });
});

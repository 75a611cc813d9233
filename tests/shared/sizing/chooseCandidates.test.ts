import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { DRIVE_TYPES } from '../../../shared/core/scene.ts';
import { chooseCandidates } from '../../../shared/sizing/chooseCandidates.ts';
import { classNote } from '../../../shared/sizing/classNote.ts';
import { classForce } from '../../../shared/sizing/driveClass.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import type { CandidateChoice } from '../../../shared/study/candidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { defaultJobValues, type Job, type JobValues } from '../../../shared/study/job.ts';

const jobOf = (changes: Partial<JobValues> = {}): Job => ({
  title: 'Shuttle',
  values: { ...defaultJobValues(), ...changes },
  moves: [],
});

const driveTypes = (candidates: readonly CandidateChoice[]) =>
  candidates.map(({ preset }) => present(PRESETS[preset]).driveType);
const forces = (candidates: readonly CandidateChoice[]) =>
  candidates.map((candidate) => classForce(candidate, PRESETS));
const passes = (job: Job, candidate: CandidateChoice) =>
  sizeCandidate(job, candidateScene(job, candidate, PRESETS)).passes;

describe('comparable drives', () => {
  it('are the four of the scenes for the default job', () => {
    const candidates = chooseCandidates(jobOf(), PRESETS);
    expect(candidates.map(({ preset }) => preset)).toEqual(DRIVE_TYPES);
    expect(candidates.map(({ motorCount }) => motorCount)).toEqual([1, 1, 1, 1]);
    expect(classNote(candidates, PRESETS)).toBe(
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
    const candidates = chooseCandidates(job, PRESETS);
    expect(driveTypes(candidates)).toEqual(DRIVE_TYPES);
    const all = forces(candidates);
    expect(Math.max(...all) / Math.min(...all)).toBeLessThan(1.15);
    // The linear motors do all of these.
    for (const candidate of candidates.slice(0, 3))
      expect(passes(job, candidate), candidate.preset).toBe(true);
    for (const { preset, motorCount } of candidates) {
      expect(motorCount).toBeLessThanOrEqual(present(PRESETS[preset]).driveType === 'screw' ? 1 : 4);
    }
  });

  it('are no larger than they have to be', () => {
    const heavy = jobOf({ payload: 100 });
    const [force] = forces(chooseCandidates(heavy, PRESETS));
    expect(force).toBeGreaterThan(300);
    for (const smaller of [300, 600].filter((each) => each < present(force))) {
      const candidate = { preset: 'flat', motorCount: smaller / 300, own: {}, gains: null };
      const screw = { preset: 'screw-600', motorCount: 1, own: {}, gains: null };
      expect(passes(heavy, candidate) && passes(heavy, screw)).toBe(false);
    }
  });

  it('show a form that cannot do the job', () => {
    const job = jobOf({ stroke: 2, travel: 2.2, moveTime: 1.5 });
    const candidates = chooseCandidates(job, PRESETS);
    expect(driveTypes(candidates)).toEqual(DRIVE_TYPES);
    expect(passes(job, at(candidates, 3))).toBe(false);
  });

  it('keep the smallest of a form that has none of the class, and the note says so', () => {
    const { flat: _, 'flat-600': __, ...others } = PRESETS;
    const candidates = chooseCandidates(jobOf(), others);
    expect(candidates.map(({ preset }) => preset)).toEqual([
      'tubular-150',
      'u-channel-150',
      'flat-1200',
      'screw-160',
    ]);
    expect(classNote(candidates, PRESETS)).toBe(
      'Not all in one class: A, B, D have a continuous force of 150 N to 160 N; C has 1.20 kN, 8.0 times as much. Payload and job are the same for all.',
    );
    expect(chooseCandidates(jobOf(), {})).toEqual([]);
  });
});

describe('the note on the class', () => {
  const candidate = (preset: string, motorCount = 1, own: CandidateChoice['own'] = {}): CandidateChoice => ({
    preset,
    motorCount,
    own,
    gains: null,
  });

  it('tells how much stronger an odd one is, own datasheets counted', () => {
    expect(
      classNote([candidate('tubular-150', 2), candidate('u-channel'), candidate('flat-600')], PRESETS),
    ).toBe(
      'Not all in one class: A, B have a continuous force of 300 N; C has 600 N, twice as much. Payload and job are the same for all.',
    );
    expect(
      classNote([candidate('tubular'), candidate('flat', 1, { continuousForce: 450 })], PRESETS),
    ).toMatch(/B has 450 N, 1\.5 times as much/);
    expect(classNote([candidate('screw-600'), candidate('screw-640-fine')], PRESETS)).toMatch(
      /the same within 6\.7 %/,
    );
    expect(classNote([candidate('tubular')], PRESETS)).toBe('');
  });
});

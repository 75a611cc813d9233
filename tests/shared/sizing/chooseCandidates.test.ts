import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { DRIVE_TYPES } from '../../../shared/core/scene.ts';
import { chooseCandidates } from '../../../shared/sizing/chooseCandidates.ts';
import { COMPARABLE, ratedForce, scaledConstants } from '../../../shared/sizing/comparable.ts';
import { comparableNote, constantRatios } from '../../../shared/sizing/comparableNote.ts';
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
  candidates.map((candidate) => ratedForce(candidate, PRESETS));
const sized = (job: Job, candidates: readonly CandidateChoice[]) =>
  candidates.map((candidate) => {
    const scene = candidateScene(job, candidate, PRESETS);
    return { scene, sizing: sizeCandidate(job, scene) };
  });
const note = (job: Job, candidates: readonly CandidateChoice[]) =>
  comparableNote(job, sized(job, candidates));
const passes = (job: Job, candidate: CandidateChoice) =>
  sizeCandidate(job, candidateScene(job, candidate, PRESETS)).passes;

describe('comparable drives', () => {
  it('are the four of the scenes for the default job', () => {
    const candidates = chooseCandidates(jobOf(), PRESETS);
    expect(candidates.map(({ preset }) => preset)).toEqual(DRIVE_TYPES);
    expect(candidates.map(({ motorCount }) => motorCount)).toEqual([1, 1, 1, 1]);
    expect(note(jobOf(), candidates)).toBe(
      'Alike in continuous force: 300 N. Payload and job are the same for all.',
    );
  });

  it.each([
    { payload: 25 },
    { payload: 60 },
    { payload: 100 },
    { inclination: Math.PI / 2, payload: 20 },
    { moveTime: 0.25 },
    { moveTime: 1.5, payload: 0.5 },
  ])('follow the job: %o', (changes) => {
    const job = jobOf(changes);
    const candidates = chooseCandidates(job, PRESETS);
    expect(driveTypes(candidates)).toEqual(DRIVE_TYPES);
    const all = forces(candidates.filter((candidate) => passes(job, candidate)));
    expect(Math.max(...all) / Math.min(...all)).toBeLessThan(1.15);
    // The linear motors do all of these.
    for (const candidate of candidates.slice(0, 3))
      expect(passes(job, candidate), candidate.preset).toBe(true);
    for (const { preset, motorCount } of candidates) {
      expect(motorCount).toBeLessThanOrEqual(present(PRESETS[preset]).driveType === 'screw' ? 1 : 4);
    }
  });

  it('show a form that cannot do the job', () => {
    const job = jobOf({ stroke: 2, travel: 2.2, moveTime: 1.5 });
    const candidates = chooseCandidates(job, PRESETS);
    expect(driveTypes(candidates)).toEqual(DRIVE_TYPES);
    expect(passes(job, at(candidates, 3))).toBe(false);
  });

  it('keep the nearest of a form that has none alike, and the note says so', () => {
    const { flat: _, 'flat-600': __, ...others } = PRESETS;
    const candidates = chooseCandidates(jobOf(), others);
    expect(candidates.map(({ preset }) => preset)).toContain('flat-1200');
    expect(note(jobOf(), candidates)).toMatch(
      /^Not alike in continuous force: .*; C 1\.20 kN, [\d.]+ times\. /,
    );
    expect(chooseCandidates(jobOf(), {})).toEqual([]);
  });
});

describe.each(Object.keys(COMPARABLE) as JobValues['comparableBy'][])('comparable by %s', (comparableBy) => {
  const job = jobOf({ comparableBy });
  const drives = sized(job, chooseCandidates(job, PRESETS));

  it('the note says whether the drives are alike within a tenth, and all linear ones do the job', () => {
    const measures = drives
      .map((drive) => COMPARABLE[comparableBy].of(drive))
      .filter((each) => each !== null);
    const apart = Math.max(...measures) / Math.min(...measures);
    const first = comparableNote(job, drives);
    // Each is set against the middle one.
    if (apart <= 1.1) expect(first).toMatch(/^Alike in /);
    if (apart > 1.1 ** 2) expect(first).toMatch(/^Not alike in /);
    expect(first).not.toMatch(/NaN|Infinity|undefined/);
    for (const { sizing } of drives.slice(0, 3)) expect(sizing.passes).toBe(true);
  });
});

describe('the consequence of the measure', () => {
  const job = jobOf();
  const [tubular, uChannel, flat, screw] = sized(
    job,
    DRIVE_TYPES.map((preset) => ({ preset, motorCount: 1, own: {}, gains: null })),
  );

  // Common practice, no source: at comparable size a tubular motor converts about 50 % better than a U-channel motor.
  it('is told with the figures of the kits: the statement of the trade holds at equal length, not at equal force', () => {
    const byLength = present(scaledConstants(present(tubular), present(uChannel), 'installed length'));
    const byForce = present(scaledConstants(present(tubular), present(uChannel), 'continuous force'));
    expect(byLength).toBeGreaterThan(1.4);
    expect(byForce).toBeLessThan(0.7);
    const [against] = constantRatios([present(tubular), present(screw), present(uChannel), present(flat)]);
    expect(against).toMatchObject({ letter: 'A', against: 'C' });
    expect(present(against).ratios).toEqual([byLength, expect.any(Number), byForce]);
  });

  it('does not change with the number of motors, and means nothing for a screw', () => {
    const [two] = sized(job, [{ preset: 'tubular', motorCount: 2, own: {}, gains: null }]);
    for (const by of ['installed length', 'coil mass', 'continuous force'] as const) {
      expect(scaledConstants(present(two), present(tubular), by)).toBeCloseTo(1, 9);
      expect(scaledConstants(present(tubular), present(screw), by)).toBeNull();
    }
    const twice = sized({ ...job, values: { ...job.values, comparableBy: 'coil mass' } }, [
      { preset: 'tubular', motorCount: 1, own: {}, gains: null },
      { preset: 'screw', motorCount: 1, own: {}, gains: null },
    ]);
    expect(comparableNote({ ...job, values: { ...job.values, comparableBy: 'coil mass' } }, twice)).toBe(
      'Alike in mass of the coil units: 2.60 kg. B: does not apply to a screw. Payload and job are the same for all.',
    );
    expect(constantRatios(twice)).toEqual([]);
    expect(comparableNote(job, [present(tubular)])).toBe('');
  });
});

import { expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { defaultJobValues, type Job } from '../../../shared/study/job.ts';
import { dropSentence } from '../../../shared/verdict/drop.ts';

/** A tubular and a U-channel motor without friction at this inclination. */
function candidates(inclination: number) {
  const job: Job = { title: '', values: { ...defaultJobValues(), inclination }, moves: [] };
  const own = { frictionCoefficient: 0, stictionCoefficient: 0, sealFriction: 0, sealStiction: 0 };
  return ['tubular', 'u-channel'].map((preset, k) => {
    const choice = { preset, motorCount: 1, own, parts: {}, gains: null };
    return { letter: 'AB'.charAt(k), sizing: sizeCandidate(job, candidateScene(job, choice, PRESETS)) };
  });
}

it('says how far an upright axis falls freely before a brake holds, and nothing of a level one', () => {
  // s = g t²/2 = 9.80665 m/s² · (50 ms)²/2 = 12.26 mm.
  expect(dropSentence(candidates(Math.PI / 2))).toBe(
    'When the drive trips at standstill, the axis drops until its brake holds 50 ms later: with A by 12 mm and with B by 12 mm.',
  );
  expect(dropSentence(candidates(0))).toBe('');
});

import { expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import type { CandidateProgress } from '../../../shared/study/outcome.ts';
import { evaluateCandidate } from '../../../workers/study/evaluateCandidate.ts';
import { jobOf } from '../accuracy/bench.ts';

it('a drive without a nut is not worn, and one that trips says so in every test and comes to its end', () => {
  const job = jobOf({ travel: 0.1, stroke: 0.06, moveTime: 0.3, scanLength: 0.005, wear: 3e-6 });
  const gains = { Kp: 1e9, Kd: 0 };
  const scene = candidateScene(job, { preset: 'tubular', motorCount: 1, own: {}, gains }, PRESETS);
  const heard: CandidateProgress[] = [];
  const { moves, accuracy } = evaluateCandidate(job, scene, (progress) => void heard.push(progress));
  expect(moves.trip).not.toBeNull();
  expect(accuracy.positioning).toHaveLength(2);
  for (const test of [...accuracy.positioning, accuracy.ripple, accuracy.energy])
    expect('trip' in test && test.trip.kind).toBeTruthy();
  expect(heard.at(-1)?.share).toBe(1);
});

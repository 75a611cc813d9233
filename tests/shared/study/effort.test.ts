import { expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { boughtParts } from '../../../shared/study/effort.ts';
import { defaultJobValues, type Job } from '../../../shared/study/job.ts';
import type { PartChoice } from '../../../shared/study/parts.ts';

const JOB: Job = { title: '', values: { ...defaultJobValues(), payload: 10, tableMass: 5 }, moves: [] };

function bought(preset: string, parts: PartChoice, motorCount = 1, job = JOB) {
  const choice = { preset, motorCount, own: {}, parts, gains: null };
  return boughtParts(job, choice, candidateScene(job, choice, PRESETS), 1);
}

const guideOf = (preset: string, parts: PartChoice, motorCount = 1) =>
  bought(preset, parts, motorCount).find(({ label }) => label.startsWith('Guide'));

/* Four carriages at a tenth of their rating, air pads at 0.2 N/mm²: common practice, no source. */
it('the guide is as large as weight and attraction together ask for', () => {
  // 15 kg weigh 147 N; an iron core attracts its track with 1.6 kN, four of them with 6.4 kN.
  expect(guideOf('u-channel', { guide: 'ball' })).toMatchObject({ label: 'Guide for 150 N', effort: 'low' });
  expect(guideOf('flat', { guide: 'ball' })).toMatchObject({ label: 'Guide for 1700 N', effort: 'medium' });
  expect(guideOf('flat', { guide: 'ball' }, 4)).toMatchObject({ effort: 'high' });
  expect(guideOf('u-channel', { guide: 'roller' })).toMatchObject({ effort: 'medium' });
  expect(guideOf('u-channel', { guide: 'air' })).toMatchObject({ effort: 'high', quantity: 1 });
  expect(guideOf('flat', { guide: 'air' })).toMatchObject({ effort: 'high', quantity: 2 });
});

it('a screw pushes a table on air through a coupling that is stiff along the axis only', () => {
  const hasCoupling = (preset: string, parts: PartChoice) =>
    bought(preset, parts).some(({ label }) => label.startsWith('Nut coupling'));
  expect(hasCoupling('screw', { guide: 'air' })).toBe(true);
  expect(hasCoupling('screw', { guide: 'ball' })).toBe(false);
  expect(hasCoupling('u-channel', { guide: 'air' })).toBe(false);
});

it('what would drop has a brake that holds it twice, and a guide that carries no weight', () => {
  const upright = { ...JOB, values: { ...JOB.values, inclination: Math.PI / 2 } };
  const labels = (preset: string, job: Job) => bought(preset, {}, 1, job).map(({ label }) => label);
  // 10 kg, 5 kg and the coil unit weigh 165 N.
  expect(labels('u-channel', upright)).toContain('Brake for 330 N');
  expect(labels('u-channel', upright)).toContain('Guide');
  expect(labels('u-channel', JOB).filter((label) => label.startsWith('Brake'))).toEqual([]);
  const brakeOf = (preset: string) =>
    bought(preset, {}, 1, upright).find(({ label }) => label.startsWith('Brake'));
  expect(brakeOf('u-channel')).toMatchObject({ effort: 'medium' });
  expect(brakeOf('screw')).toMatchObject({ effort: 'low' });
});

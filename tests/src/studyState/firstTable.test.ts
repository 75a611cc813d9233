import { expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { firstTable } from '../../../src/studyState/tables/sizingRows.ts';
import { recordedDrives, recordedJob } from '../../shared/study/recordedStudy.ts';

it('tells of every drive what its motor is used by, and rules out with the reason what the calculation rules out', () => {
  const light = recordedJob();
  const heavy = { ...light, values: { ...light.values, payload: 400 } };
  const [fine, overloaded] = [light, heavy].map((job) => {
    const { choice } = recordedDrives().A;
    const scene = candidateScene(job, { ...choice, gains: null }, PRESETS);
    return { letter: 'A', title: scene.title, sizing: sizeCandidate(job, scene) };
  });
  if (!fine || !overloaded) throw new Error('two sizings were made');
  const rows = firstTable([fine, overloaded]).groups[0]?.rows ?? [];
  const [answer, continuous] = rows;
  expect(answer?.cells.map(({ text }) => text)).toEqual(['not ruled out', 'ruled out']);
  expect(answer?.cells[0]?.reason).toBeUndefined();
  expect(answer?.cells[1]?.reason).toBe(overloaded.sizing.reasons.join(' '));
  expect(answer?.cells[1]?.reason).toMatch(/\d/);
  // The force needed over the continuous force, as the sizing has it: above all of it for the heavy load.
  expect(continuous?.label).toMatch(/continuous/i);
  expect(continuous?.cells[0]?.text).toMatch(/^\d+(\.\d+)? %$/);
  expect(continuous?.cells[1]?.marks).toEqual(['beyond']);
});

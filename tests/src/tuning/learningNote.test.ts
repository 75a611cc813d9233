import { expect, it } from 'vitest';
import { moveLearned } from '../../../shared/core/learnedMove.ts';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { learningText } from '../../../src/tuning/learningNote.ts';

const p = defaultParameters();
const learned = {
  forces: new Float64Array(2),
  move: moveLearned(p),
  course: {
    peaks: [4e-5, 4e-6],
    rms: [2e-5, 2e-6],
    before: new Float64Array(2),
    after: new Float64Array(2),
    worstRate: 0.8,
    worstFrequency: 10,
    bandwidth: 30,
  },
};

it('says the error of each repeat, the condition, and that nothing is kept', () => {
  expect(learningText(learned, p)).toBe(
    'Peak error of each repeat: 40.0 µm, 4.00 µm. RMS: 20.0 µm, 2.00 µm. Learned up to 30.0 Hz; largest |Q (1 − L G)| 0.80 at 10.0 Hz, below 1: it converges. Not kept in files or links.',
  );
});

it('says when nothing was learned, and when the move is another', () => {
  expect(learningText(undefined, p)).toBe('Nothing has been learned for a repeated move.');
  expect(learningText(learned, { ...p, stroke: p.stroke / 2 })).toMatch(/the learned force is not applied/);
});

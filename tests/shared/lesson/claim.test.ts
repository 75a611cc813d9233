import { expect, it } from 'vitest';
import { LESSONS } from '../../../scenes/lessons/index.ts';
import { present } from '../../../shared/core/at.ts';
import { claimText } from '../../../shared/lesson/claim.ts';

const { steps } = present(LESSONS.find(({ id }) => id === 'slow-scan')).lesson;
const measures = steps.flatMap((step) => step.measures);
const [claim] = present(steps.at(-1)).answer.claims;

it('names a figure once and tells the machines apart', () => {
  const measured = new Map([
    ['current iron', 0.6],
    ['current ironless', 0.006],
  ]);
  expect(claimText(present(claim), measures, measured)).toMatch(
    /^Force current, peak to peak: iron-core 600 mA( peak)?, ironless 6.00 mA( peak)?\. 100 times as much\.$/,
  );
});

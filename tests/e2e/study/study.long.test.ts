import { expect, it } from 'vitest';
import { writeStudy } from '../../../shared/files/studyFile.ts';
import type { Study } from '../../../shared/study/candidate.ts';
import { defaultJobValues } from '../../../shared/study/job.ts';
import { pageTests } from '../page.ts';
import {
  expectSoundResults,
  jobHeading,
  linkOfReport,
  openStudy,
  savedStudy,
  show,
  simulateAll,
} from './studyControls.ts';

const { open } = pageTests();

/** Tuned already, on a short axis that works for an hour a day: seconds to simulate. */
const SMALL: Study = {
  job: {
    title: 'Move a mould',
    values: {
      ...defaultJobValues(),
      travel: 0.1,
      stroke: 0.05,
      scanLength: 0.01,
      window: 2e-5,
      dailyTime: 3600,
    },
    moves: [],
  },
  candidates: [{ preset: 'tubular', motorCount: 1, own: {}, gains: { forceBias: 0 } }],
};

it('takes a customer from the job to a report that repeats it', async () => {
  const page = await open({ stage: false, viewport: { width: 1440, height: 900 } });
  await openStudy(page);
  await page.locator('#job-payload').fill('6.5');
  await page.locator('#job-payload').press('Tab');
  await page.getByText('Carry 6.5 kg over 250 mm').waitFor();
  // Two drives are enough to tell apart.
  for (const drive of [3, 1])
    await page
      .getByRole('button', { name: /^Remove/ })
      .nth(drive)
      .click();
  await simulateAll(page);

  await show(page, 'Verdict');
  await page.getByText(/^Take [AB] /).waitFor();
  await expectSoundResults(page);
  const study = await savedStudy(page);
  expect(study.job.values.payload).toBe(6.5);
  expect(study.candidates.map(({ gains }) => gains !== null)).toEqual([true, true]);
  const link = await linkOfReport(page, study);

  // The link opens the same study, tuned, in a page that knows nothing of it.
  await page.goto('about:blank');
  await page.goto(link);
  await page.getByText('Carry 6.5 kg over 250 mm').waitFor();
  await show(page, 'Side by side');
  await page.getByText('Every drive is pretuned to the same peak sensitivity').waitFor();
});

it('takes a study file to its verdict and a report that repeats it', async () => {
  const page = await open({ stage: false, viewport: { width: 1440, height: 900 } });
  const chooser = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  const buffer = Buffer.from(writeStudy(SMALL));
  await (await chooser).setFiles({ name: 'mould.study.json', mimeType: 'application/json', buffer });
  await jobHeading(page).waitFor();
  await simulateAll(page);
  await expectSoundResults(page);
  expect(await savedStudy(page)).toEqual(SMALL);
  await linkOfReport(page, SMALL);
});

import { expect, it } from 'vitest';
import { pageTests } from './page.ts';
import {
  expectSoundResults,
  linkOfReport,
  openStudy,
  savedStudy,
  show,
  simulateAll,
} from './studyControls.ts';

const { open } = pageTests();

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

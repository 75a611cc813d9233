import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { writeStudy } from '../../../shared/files/studyFile.ts';
import type { Study } from '../../../shared/study/candidate.ts';
import { defaultJobValues } from '../../../shared/study/job.ts';
import { reportHtml } from '../../../src/paper/report/reportHtml.ts';
import { sampleReport } from '../../src/paper/sampleReport.ts';
import { expectState } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { violations } from '../support/violations.ts';
import {
  expectNoMetric,
  expectSoundResults,
  jobHeading,
  linkOfReport,
  openStudy,
  savedStudy,
  show,
  simulateAll,
} from './studyControls.ts';

const { blank, open } = pageTests();

const candidatesTime = async (page: Page) =>
  Number.parseFloat(present(await page.locator('.candidates-transport .time').textContent()));

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

/** Opens SMALL as a file, on a page of its own. */
async function openSmall(): Promise<Page> {
  const page = await open({ stage: false, viewport: { width: 1440, height: 900 } });
  const chooser = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  const buffer = Buffer.from(writeStudy(SMALL));
  await (await chooser).setFiles({ name: 'mould.study.json', mimeType: 'application/json', buffer });
  await jobHeading(page).waitFor();
  return page;
}

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
  await page.getByText('Every drive is pretuned to the same limit, a peak sensitivity').waitFor();
});

it('takes a study file to its verdict and a report that repeats it', async () => {
  const page = await openSmall();
  // The example makes room for the file.
  await page.getByText('Carry 5 kg over 50 mm').waitFor();
  await simulateAll(page);
  await expectSoundResults(page);
  await expectNoMetric(page);
  expect(await savedStudy(page)).toEqual(SMALL);
  const link = await linkOfReport(page, SMALL);

  // Opened again in a page that has just been loaded, it has its results at once.
  await page.goto('about:blank');
  await page.goto(link);
  await page.getByText('All drives are tuned and simulated.').first().waitFor();
  await show(page, 'Verdict');
  await page.getByText('All figures', { exact: true }).waitFor();
  expect(await page.getByRole('button', { name: 'Simulate all' }).first().isVisible()).toBe(false);
});

it('keeps its workers for the next run while it is shown, and no longer', async () => {
  const page = await openSmall();
  await simulateAll(page);
  const atWork = () => page.workers().filter((worker) => worker.url().includes('candidateWorker'));
  const first = atWork();
  expect(first).not.toEqual([]);

  await page.locator('#job-dailyTime').fill('2');
  await page.locator('#job-dailyTime').press('Tab');
  await simulateAll(page);
  for (const worker of atWork()) expect(first).toContain(worker);

  await page.getByRole('button', { name: 'Back to the bench' }).click();
  await eventually(async () => atWork().length).toBe(0);
});

it('runs four drives in lockstep, pauses them and looks back', async () => {
  const page = await open({ stage: false, viewport: { width: 1440, height: 900 } });
  await openStudy(page);
  await show(page, 'Side by side');
  const transport = page.getByRole('group', { name: 'Run of all candidates' });
  await transport.getByRole('button', { name: 'Run', exact: true }).click();
  await eventually(() => candidatesTime(page)).toBeGreaterThan(1.5);
  await page.keyboard.press(' ');
  await transport.getByRole('button', { name: 'Run', exact: true }).waitFor();
  expect(await page.locator('.candidates-pane').textContent()).not.toMatch(/\b(NaN|undefined|Infinity)\b/);
  const paused = await candidatesTime(page);
  for (let k = 0; k < 5; k++) await page.keyboard.press('ArrowLeft');
  await eventually(() => candidatesTime(page)).toBeLessThan(paused);
  await transport.getByRole('button', { name: 'Live' }).click();
  // The slower ones still run up to the moment of the pause.
  await eventually(() => candidatesTime(page)).toBeGreaterThanOrEqual(paused);
  expect(await violations(page)).toEqual([]);

  await page
    .getByRole('button', { name: /bench/i })
    .and(page.locator('.candidates-cards button'))
    .nth(2)
    .click();
  await expectState(page, 'Paused');
  await page.getByRole('heading', { name: 'Flat motor, iron-core' }).waitFor();
});

it('is calm on a small screen, in dark and at presenter size', async () => {
  const page = await open({ stage: false, colorScheme: 'dark', viewport: { width: 1024, height: 768 } });
  await openStudy(page);
  await show(page, 'Sizing');
  await page.getByText('All figures; each opens to its calculation').waitFor();
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('p');
  for (const part of ['Job', 'Verdict'] as const) {
    await show(page, part);
    expect(await violations(page)).toEqual([]);
    const { width, view } = await page.evaluate(() => ({
      width: document.documentElement.scrollWidth,
      view: document.documentElement.clientWidth,
    }));
    expect(width).toBe(view);
  }
});

it.each([
  ['A4', 210, 297, 10],
  // Wider and shorter.
  ['Letter', 215.9, 279.4, 11],
])(
  'prints on %s: what is to be handed over on the first page, few more, nothing wider than the paper',
  async (format, width, height, most) => {
    const page = await blank();
    await page.setContent(reportHtml(sampleReport()));
    const pdf = await page.pdf({ format });
    const pages = present(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).length;
    expect(pages).toBeGreaterThan(5);
    expect(pages).toBeLessThanOrEqual(most);
    // What is printed on of the paper, mm, less its margins, at 96 px an inch.
    const pixels = (length: number) => Math.floor(length * (96 / 25.4));
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: pixels(width - 28), height: pixels(height - 29) });
    const seen = await page.evaluate(() => ({
      overflow: document.documentElement.scrollWidth - document.documentElement.clientWidth,
      endOfFirst: document.querySelector('.summary')?.getBoundingClientRect().bottom ?? 0,
      height: window.innerHeight,
    }));
    expect(seen.overflow).toBe(0);
    expect(seen.endOfFirst).toBeGreaterThan(seen.height / 2);
    expect(seen.endOfFirst).toBeLessThanOrEqual(seen.height);
  },
);

import { onFoldedPage } from './foldedPage.mjs';

/** Entries of the job form: one that makes every drive another one, and one that leaves their moves as they are. */
const OTHER_JOB = ['payload', '5.2'];
const ONE_INPUT = ['dailyTime', '10'];
const DONE = 'All drives are tuned and simulated';
const MACHINES = 1000;

/**
 * How long a person waits in the built page, in a headless browser with the stage folded away and the simulation paused.
 *
 * @returns {Promise<{ study: number, changed: number, machines: number }>} for all four drives of a job that nobody has simulated, tuned and
 * simulated, s from the press; once more after one of its inputs has changed, what that leaves as it is being kept; and machines a second of
 * a tolerance study of the opening scene
 */
export function studyWaits() {
  return onFoldedPage(async (page) => {
    await page.keyboard.press('Space');
    await page.locator('#bar .clock .state', { hasText: 'Paused' }).waitFor();
    const machines = await machinesBuilt(page);
    await page.keyboard.press('w');
    const study = await simulated(page, OTHER_JOB);
    return { study, changed: await simulated(page, ONE_INPUT), machines };
  });
}

/**
 * @param {import('playwright-core').Page} page
 * @param {string[]} entry
 */
async function simulated(page, [id, value]) {
  const field = page.locator(`#job-${id}`);
  await field.fill(value);
  await field.press('Tab');
  const button = page.getByRole('button', { name: 'Simulate all', exact: true });
  await button.and(page.locator(':enabled')).first().waitFor();
  const begun = performance.now();
  await button.first().click();
  await page.waitForFunction((done) => document.body.textContent.includes(done), DONE, { polling: 100 });
  return (performance.now() - begun) / 1000;
}

/** @param {import('playwright-core').Page} page */
async function machinesBuilt(page) {
  await page.getByRole('button', { name: 'How sure is this? …', exact: true }).click();
  const dialog = page.getByRole('dialog', { name: 'How sure is this?' });
  await dialog.locator('#tolerance-runs').fill(String(MACHINES));
  await dialog.getByRole('button', { name: 'Build and run', exact: true }).click();
  const status = dialog.locator('.tolerance-status', { hasText: `${MACHINES} machines in` });
  await status.waitFor();
  const [, seconds] = (await status.textContent()).match(/ in ([0-9.]+) s/);
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'hidden' });
  return MACHINES / Number(seconds);
}

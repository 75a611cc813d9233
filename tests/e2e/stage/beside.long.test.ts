import { expect, it } from 'vitest';
import { expectState, press, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { webmPictures } from './webm.ts';

const { open } = pageTests();

it.each([
  { width: 1024, height: 768 },
  { width: 1180, height: 820 },
])('why an axis has stopped can be read without scrolling at $width × $height', async (viewport) => {
  const page = await open({ stage: false, viewport });
  // Hardly damped, the axis of the bench swings until its drive trips.
  await type(page, 'Kd', '400');
  await page.locator('body').click({ position: { x: 5, y: 5 } });
  await page.keyboard.press('u');
  await page.getByRole('region', { name: 'Candidate B:' }).waitFor();
  await page
    .getByRole('group', { name: 'Run of all candidates' })
    .getByRole('button', { name: 'Run', exact: true })
    .click();
  const card = page.getByRole('region', { name: 'Candidate A:' });
  const reason = card.getByText('Tripped at');
  await reason.waitFor();
  const sizes = () =>
    reason.evaluate(({ scrollHeight, clientHeight, scrollWidth, clientWidth }) => ({
      hidden: Math.max(scrollHeight - clientHeight, scrollWidth - clientWidth),
      width: clientWidth,
    }));
  expect((await sizes()).hidden).toBe(0);
  expect((await sizes()).width).toBeGreaterThan(150);
  // The longest that the page has to say.
  await reason.evaluate((element) => {
    element.textContent =
      'Tripped at 1.234 s. The motion grew without bound although the drive is off: values of the machine do not go together. Undo the last change, then reset.';
  });
  expect((await sizes()).hidden).toBe(0);
  expect(await card.locator('.gauge').first().isVisible()).toBe(true);
});

it('slow motion at events is the same for one axis and for two', async () => {
  const page = await open({ stage: false });
  const slowed = (run: string) =>
    page.getByRole('group', { name: run, exact: true }).getByText(/^slow motion at .*real time$/);
  await page.getByRole('button', { name: 'View', exact: true }).click();
  await page.getByRole('button', { name: 'Slow motion at events' }).click();
  await press(page, 'Run');
  await slowed('Run').waitFor();
  await press(page, 'Pause');
  await expectState(page, 'Paused');
  await page.locator('body').click({ position: { x: 5, y: 5 } });
  await page.keyboard.press('u');
  await page.getByRole('region', { name: 'Candidate B:' }).waitFor();
  await page.getByRole('checkbox', { name: 'Slow motion at events' }).check();
  const run = page.getByRole('group', { name: 'Run of all candidates', exact: true });
  await run.getByRole('button', { name: 'Run', exact: true }).click();
  await slowed('Run of all candidates').waitFor();
  // Afterwards it goes on as it was asked to.
  await run.getByText(/^(running at|.*s lost)/).waitFor();
});

it('records a video of two axes with their numbers, and saves it', async () => {
  const page = await open();
  await page.keyboard.press('u');
  const run = page.getByRole('group', { name: 'Run of all candidates' });
  await run.getByRole('button', { name: 'Run', exact: true }).click();
  await page.getByRole('button', { name: 'Video …' }).click();
  const box = page.getByRole('region', { name: 'Video of the stage' }).filter({ visible: true });
  await box.getByRole('radio', { name: 'until stopped' }).check();
  await box.getByRole('button', { name: 'Record', exact: true }).click();
  await eventually(() => box.locator('output').textContent()).toMatch(/^Recording: [2-9]\d* s of 60 s$/);
  const saving = page.waitForEvent('download');
  await page.keyboard.press(';');
  const saved = await saving;
  expect(saved.suggestedFilename()).toBe('2-axes-side-by-side.webm');
  const video = Buffer.concat(await (await saved.createReadStream()).toArray());
  expect(webmPictures(video).length).toBeGreaterThan(1);
});

import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { makeMove, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';

const { open } = pageTests();

const dialog = (page: Page) => page.getByRole('dialog', { name: 'Record a lesson' });
const pane = (page: Page) => page.getByRole('complementary', { name: 'Lesson' });
const fill = (page: Page, label: string, text: string) =>
  dialog(page).getByLabel(label, { exact: true }).filter({ visible: true }).fill(text);

it('a lesson is recorded in two steps, saved, opened again and taught', async () => {
  const page = await open({ stage: false });
  await page.keyboard.press('o');
  await page.getByRole('button', { name: 'Record a lesson …' }).click();

  await dialog(page).getByRole('button', { name: 'Record a step' }).click();
  await page.getByText(/^Recording step 1/).waitFor();
  await page.getByText('No move finished yet.').waitFor();
  await makeMove(page);
  await page.getByRole('button', { name: 'Keep this step' }).click();
  await fill(page, 'Title of the step', 'A firm loop');
  await fill(page, 'Text, read aloud', 'The gain is high.');
  await fill(page, 'Answer, read aloud', 'It follows closely.');

  await dialog(page).getByRole('button', { name: 'Record a step' }).click();
  await page.getByText(/^Recording step 2/).waitFor();
  await type(page, 'Kp', '1.2e6');
  await page.getByText('No move finished yet.').waitFor();
  await makeMove(page);
  await page.getByRole('button', { name: 'Keep this step' }).click();

  // What is missing is named, and nothing is saved.
  await dialog(page).getByRole('button', { name: 'Save lesson' }).click();
  await dialog(page).getByText(/title/i).first().waitFor();
  expect(await dialog(page).locator('.dialog-problems li').count()).toBeGreaterThan(0);

  await fill(page, 'Title', 'Firm and loose');
  await fill(page, 'What the class knows afterwards', 'Gain costs nothing but margin.');
  await fill(page, 'Title of the step', 'A loose loop');
  await fill(page, 'Text, read aloud', 'Now the gain is lower.');
  await fill(page, 'Question', 'What does the error do?');
  await fill(page, 'Answers, one a line, two to four', 'It grows.\nIt stays.');
  await dialog(page).getByLabel('Following error chart').filter({ visible: true }).check();
  await dialog(page).getByText('Measured, and shown with the answer').filter({ visible: true }).click();
  await dialog(page).getByLabel('Following error, peak').filter({ visible: true }).check();
  await fill(page, 'Answer, read aloud', 'It grows, because less force comes from the same error.');

  const download = page.waitForEvent('download');
  await dialog(page).getByRole('button', { name: 'Save lesson' }).click();
  const saved = await download;
  expect(saved.suggestedFilename()).toBe('firm-and-loose.lesson.json');
  const buffer = Buffer.concat(await (await saved.createReadStream()).toArray());
  await dialog(page).getByRole('button', { name: 'Close and keep' }).click();

  const chooser = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  await (await chooser).setFiles({ name: 'mine.json', mimeType: 'application/json', buffer });
  await pane(page).getByRole('heading', { name: 'A firm loop' }).waitFor();
  await page.keyboard.press('PageDown');
  await page.keyboard.press('PageDown');
  await pane(page).getByText('It follows closely.').waitFor();
  await page.keyboard.press('PageDown');
  await pane(page).getByText('What does the error do?').waitFor();
  expect(await page.locator('.charts-row.lesson-mark').getAttribute('aria-label')).toBe('Following error');
  await page.keyboard.press('1');
  await page.keyboard.press('PageDown');
  await page.keyboard.press('PageDown');
  await pane(page)
    .getByText(/^As predicted: It grows/)
    .waitFor();
  expect(await pane(page).textContent()).toMatch(/Following error, peak: [\d.]+\sµm/);

  // Editing goes on from the file: the steps change places with the keyboard alone.
  await pane(page).getByText('Trainer’s notes').click();
  await pane(page).getByRole('button', { name: 'Edit this lesson' }).click();
  await dialog(page).getByRole('button', { name: 'Step 1 later' }).press('Enter');
  expect(await dialog(page).locator('.lesson-step > summary').allTextContents()).toEqual([
    'Step 1: A loose loop',
    'Step 2: A firm loop',
  ]);
  await dialog(page).getByRole('button', { name: 'Delete step 2' }).press('Enter');
  expect(await dialog(page).locator('.lesson-step > summary').count()).toBe(1);
});

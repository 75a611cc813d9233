import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { LESSONS } from '../../../scenes/lessons/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { clock, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';

const { open } = pageTests();
const { lesson } = present(LESSONS.find(({ id }) => id === 'cogging-by-hand'));

const pane = (page: Page) => page.getByRole('complementary', { name: 'Lesson' });
const heading = (page: Page, index: number) =>
  pane(page).getByRole('heading', { name: at(lesson.steps, index).title, exact: true });

it('teaches a lesson with a clicker: asked, run, answered with what was measured, and the bench comes back', async () => {
  const page = await open({ stage: false });
  await type(page, 'Kp', '1.5e6');
  await page.getByRole('heading', { name: 'Tuning', exact: true }).click();
  await page.keyboard.press('o');
  await page.getByRole('button', { name: `Start ${lesson.title}` }).click();
  await heading(page, 0).waitFor();
  expect(await clock(page)).toBe(0);
  await page.keyboard.press('2');
  await page.keyboard.press('PageDown');
  await page.keyboard.press('PageDown');
  await pane(page).getByRole('heading', { name: 'Measured just now, from 1 to 4.3 s' }).waitFor();
  const answer = await pane(page).textContent();
  expect(answer).toMatch(/As predicted: In jerks/);
  // Three times the 10 mm/s of the hand and more.
  expect(answer).toMatch(/Table speed, highest, iron-core: [\d.]+\smm\/s\. More than 30\.0\smm\/s\./);
  expect(answer).not.toMatch(/does not bear|NaN|—/);
  await page.keyboard.press('PageDown');
  await heading(page, 1).waitFor();
  await page.keyboard.press('PageUp');
  await heading(page, 0).waitFor();
  await pane(page).getByRole('button', { name: 'End lesson' }).first().click();
  await pane(page).waitFor({ state: 'hidden' });
  expect(await page.locator('#field-Kp').inputValue()).toBe('1.5e6');
  await page.keyboard.press('Control+z');
  await eventually(() => page.locator('#field-Kp').inputValue()).not.toBe('1.5e6');
});

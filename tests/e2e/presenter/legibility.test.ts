import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { smallestType, smallTexts } from './legibility.ts';

const { open } = pageTests();

it('from the back row every text of the bench and of a lesson can be read', async () => {
  const page = await open({ stage: false, viewport: { width: 1280, height: 720 } });
  const least = smallestType(720) - 0.1;
  expect(await smallTexts(page, least), 'at the desk there are smaller ones').not.toEqual([]);
  await page.keyboard.press('p');
  expect(await smallTexts(page, least), 'bench').toEqual([]);
  await page.getByRole('button', { name: 'Lessons', exact: true }).click();
  await page.getByRole('button', { name: 'Start What makes force' }).click();
  const lesson = page.getByRole('complementary', { name: 'Lesson' });
  await lesson.getByText('Trainer’s notes').click();
  expect(await smallTexts(page, least), 'question').toEqual([]);
  await page.keyboard.press('PageDown');
  await page.keyboard.press('PageDown');
  await lesson.getByRole('heading', { name: 'Measured just now' }).waitFor();
  expect(await smallTexts(page, least), 'answer').toEqual([]);
});

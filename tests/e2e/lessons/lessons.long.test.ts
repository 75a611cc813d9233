import { expect, it } from 'vitest';
import { LESSONS } from '../../../scenes/lessons/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { kept, offer as offerOf } from '../kept/keptPages.ts';
import { type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';

const { open } = pageTests();
const { id, lesson } = present(LESSONS.find((each) => each.id === 'slow-scan'));

it('at the presenter size an answer is read in two pages, none of which has to be scrolled', async () => {
  const page = await open({ stage: 'flat' });
  await page.keyboard.press('p');
  await page.evaluate((hash) => location.assign(hash), `#lesson=${id}`);
  const pane = page.getByRole('complementary', { name: 'Lesson' });
  const next = pane.locator('.lesson-ways .primary');
  const reasons = pane.getByText(at(lesson.steps, 0).answer.text.slice(0, 40));
  const expectInSight = async () => {
    const beyond = await pane.locator('.lesson-body').evaluate((body) => {
      const bottom = body.firstElementChild?.getBoundingClientRect().bottom ?? Number.NaN;
      return bottom - body.getBoundingClientRect().bottom;
    });
    expect(beyond).toBeLessThanOrEqual(0);
  };
  await pane.getByRole('button', { name: at(lesson.steps, 0).question?.answers[0] ?? '' }).click();
  await expectInSight();
  await page.keyboard.press('PageDown');
  await page.keyboard.press('PageDown');
  await pane.getByText('Measured just now').waitFor();
  expect(await next.textContent()).toBe('Why?');
  expect(await reasons.count()).toBe(0);
  await expectInSight();
  await page.keyboard.press('PageDown');
  await reasons.waitFor();
  expect(await pane.getByText('Measured just now').count()).toBe(0);
  expect(await next.textContent()).toBe('Next step');
  await expectInSight();
  await page.keyboard.press('PageUp');
  await pane.getByText('Measured just now').waitFor();
});

it('a lesson that a link opens has the page; the offer of earlier work comes when it has ended', async () => {
  const first = await open({ stage: false });
  await type(first, 'Kp', '1.5e6');
  await eventually(() => kept(first)).toBe(1);
  await first.close();
  const page = await open({ stage: false, stored: true });
  const offer = offerOf(page);
  await offer.waitFor();
  await page.evaluate((hash) => location.assign(hash), `#lesson=${id}`);
  const pane = page.getByRole('complementary', { name: 'Lesson' });
  await pane.waitFor();
  expect(await offer.isVisible()).toBe(false);
  await pane.getByRole('button', { name: 'End lesson' }).click();
  await offer.waitFor();
});

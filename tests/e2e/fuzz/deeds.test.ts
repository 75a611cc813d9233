import type { Page } from 'playwright-core';
import { it } from 'vitest';
import { seeded } from '../../../shared/core/seeded.ts';
import { COUNTS, SEED } from '../../fuzz/counts.ts';
import { clock, expectState } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { deedFrom } from './deeds.ts';

const { open } = pageTests();

const VIEWPORT = { width: 1280, height: 720 };
/** Deeds between two looks at what is written on the page. */
const LOOK = 10;

/**
 * Presses the first button of this name in sight, as a person does who presses where it is seen. Says what lies over it instead, and
 * nothing where there is no such button.
 */
async function pressInSight(page: Page, name: RegExp): Promise<string[]> {
  const buttons = page.getByRole('button', { name }).filter({ visible: true });
  const press = await buttons.evaluateAll(([button]) => {
    if (!button) return null;
    button.scrollIntoView({ block: 'nearest' });
    const { left, top, width, height } = button.getBoundingClientRect();
    const [x, y] = [left + width / 2, top + height / 2];
    const found = document.elementFromPoint(x, y);
    return { x, y, over: button.contains(found) ? null : (found?.outerHTML.slice(0, 80) ?? 'nothing') };
  });
  if (!press) return [];
  const { x, y, over } = press;
  if (over !== null) return [`${name} has ${over} over it.`];
  await page.mouse.click(x, y);
  return [];
}

/**
 * Back on the bench with the axis at its start, whatever is open. What a deed asked for may still be on its way and open
 * over the bench, so that leaving is tried until it has come to an end.
 */
async function comeBack(page: Page): Promise<void> {
  await eventually(async () => {
    const left: string[] = [];
    await page.keyboard.press('Escape');
    for (const name of [/^Back to the bench/, /^End lesson/, /^Discard/, /^Pause$/, /^Reset$/])
      left.push(...(await pressInSight(page, name)));
    for (const dialog of await page.locator('dialog[open]').allTextContents())
      left.push(`A dialog is open: ${dialog.slice(0, 80)}`);
    if (!(await page.locator('#bar').isVisible())) left.push('The bench is out of sight.');
    const time = await clock(page);
    if (time !== 0) left.push(`The clock is at ${time} s.`);
    return left;
  }).toEqual([]);
  await expectState(page, 'Paused');
}

it('any deeds on the page leave it in order: no error, no number that is none, an axis that runs', async () => {
  const random = seeded(SEED);
  const page = await open({ stage: 'flat', viewport: VIEWPORT });
  page.on('dialog', (dialog) => void dialog.dismiss());
  const done: string[] = [];
  try {
    for (let k = 0; k < COUNTS.deeds; k++) {
      const deed = deedFrom(random, VIEWPORT);
      done.push(deed.text);
      await deed.act(page);
      if (k % LOOK !== 0) continue;
      const words = (await page.locator('body').textContent()) ?? '';
      const wrong = /.{0,60}\b(NaN|undefined|Infinity)\b.{0,60}/s.exec(words)?.[0];
      if (wrong) throw new Error(`On the page: ${wrong}`);
    }
    await comeBack(page);
  } catch (error) {
    throw new Error(
      `${error instanceof Error ? error.message : error}\nSeed ${SEED}, after: ${done.slice(-30).join('; ')}`,
    );
  }
});

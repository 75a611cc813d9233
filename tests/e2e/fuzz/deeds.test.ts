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
/** A press that something lies over is given up soon, and tried again, ms. */
const BRIEFLY = 1000;

/**
 * Back on the bench with the axis at its start, whatever is open. What a deed asked for may still be on its way and open
 * over the bench, so that leaving is tried until it has come to an end.
 */
async function comeBack(page: Page): Promise<void> {
  const shown = async (name: RegExp) => {
    const button = page.getByRole('button', { name }).filter({ visible: true }).first();
    return (await button.count()) > 0 ? button : null;
  };
  await eventually(async () => {
    const left: string[] = [];
    await page.keyboard.press('Escape');
    for (const name of [/^Back to the bench/, /^End lesson/, /^Discard/, /^Pause$/, /^Reset$/])
      await (await shown(name))
        ?.click({ timeout: BRIEFLY })
        .catch((error: Error) => left.push(`${name}: ${error.message}`));
    for (const dialog of await page.locator('dialog[open]').all())
      left.push(`A dialog: ${((await dialog.textContent()) ?? '').slice(0, 80)}`);
    if (!(await page.locator('#bar').isVisible())) left.push('The bench is out of sight.');
    if ((await clock(page)) !== 0) left.push(`The clock is at ${await clock(page)} s.`);
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

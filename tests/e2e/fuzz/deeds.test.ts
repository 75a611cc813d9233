import type { Page } from 'playwright-core';
import { it } from 'vitest';
import { seeded } from '../../../shared/core/seeded.ts';
import { COUNTS, SEED } from '../../fuzz/counts.ts';
import { reset } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { deedFrom } from './deeds.ts';

const { open } = pageTests();

const VIEWPORT = { width: 1280, height: 720 };
/** Deeds between two looks at what is written on the page. */
const LOOK = 10;

/** Back on the bench, whatever is open. */
async function comeBack(page: Page): Promise<void> {
  for (let k = 0; k < 4; k++) await page.keyboard.press('Escape');
  const back = page.getByRole('button', { name: 'Back to the bench' }).filter({ visible: true });
  if ((await back.count()) > 0) await back.first().click();
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
    const pause = page
      .getByRole('group', { name: 'Run', exact: true })
      .getByRole('button', { name: 'Pause' });
    if (await pause.isVisible()) await pause.click();
    await reset(page);
  } catch (error) {
    throw new Error(
      `${error instanceof Error ? error.message : error}\nSeed ${SEED}, after: ${done.slice(-30).join('; ')}`,
    );
  }
});

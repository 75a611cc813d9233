import type { Locator, Page } from 'playwright-core';

/* Without the test runner: the endurance run, which has none, presses keys by it too. */

/** After so long without an effect a key is pressed again, ms, and so many times: what is on its way must have come by then, since many keys also take back. */
const AGAIN = 10_000;
const TRIES = 20;

/** Presses a key until what it does is seen: again where it came while something else still had the keys. */
export async function pressUntil(
  page: Page,
  key: string,
  seen: Locator,
  state: 'visible' | 'hidden' = 'visible',
): Promise<void> {
  for (let tries = 1; ; tries++) {
    if ((await seen.isVisible()) !== (state === 'visible')) await page.keyboard.press(key);
    try {
      await seen.waitFor({ state, timeout: AGAIN });
      return;
    } catch (error) {
      if (tries === TRIES) throw error;
    }
  }
}

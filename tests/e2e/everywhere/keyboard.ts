import type { Locator, Page } from 'playwright-core';
import { eventually } from '../support/patience.ts';

/** More than there are stops in any view, the browser's own included. */
const STOPS = 1000;

/** Goes to a control by the Tab key alone. */
export async function goTo(page: Page, wanted: Locator): Promise<void> {
  await wanted.waitFor({ state: 'attached' });
  for (let stop = 0; stop < STOPS; stop++) {
    if (await wanted.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`The Tab key does not lead to ${wanted}.`);
}

/** Goes to a button and presses it. */
export async function use(page: Page, wanted: Locator): Promise<void> {
  await goTo(page, wanted);
  await page.keyboard.press('Enter');
}

/** One of a row of options: to the row by the Tab key, to the option by the arrows. */
export async function choose(page: Page, row: string, option: string): Promise<void> {
  const options = page.getByRole('group', { name: row, exact: true });
  const wanted = options.getByRole('radio', { name: option, exact: true });
  await goTo(page, options.getByRole('radio', { checked: true }));
  for (const _ of await options.getByRole('radio').all()) {
    if (await wanted.isChecked()) break;
    await page.keyboard.press('ArrowRight');
  }
  await eventually(() => wanted.isChecked()).toBe(true);
}

/** Out of what takes letters for itself, so that a key means something to the page. */
export async function leaveField(page: Page): Promise<void> {
  const isField = () =>
    page.evaluate(() => document.activeElement?.matches('input, select, textarea, iframe') ?? false);
  while (await isField()) await page.keyboard.press('Tab');
}

/**
 * What can be used in sight but is not reached by the Tab key alone, by its label. Of a group of radio buttons one is reached, and the arrows
 * go on from there.
 */
export async function unreachable(page: Page): Promise<string[]> {
  await page.evaluate(markControls);
  const marked = await page.evaluate(() => document.querySelectorAll('[data-to-reach]').length);
  // Once around, wherever the focus is: through everything, and through the browser itself.
  for (let stop = 0; stop < 2 * marked + 20; stop++) {
    await page.keyboard.press('Tab');
    const left = await page.evaluate(() => {
      document.activeElement?.removeAttribute('data-to-reach');
      return document.querySelectorAll('[data-to-reach]').length;
    });
    if (left === 0) break;
  }
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('[data-to-reach]')].map((each) => {
      each.removeAttribute('data-to-reach');
      return `${each.tagName} ${each.id} ${each.ariaLabel ?? each.textContent ?? ''}`.slice(0, 80);
    }),
  );
}

/** Runs in the page. */
function markControls(): void {
  const within = [...document.querySelectorAll('dialog[open]')].at(-1) ?? document.body;
  const controls = within.querySelectorAll<HTMLElement>(
    'button, select, input, textarea, summary, a[href], [tabindex]',
  );
  for (const each of controls) {
    const isRadio = each instanceof HTMLInputElement && each.type === 'radio';
    const isUsable =
      each.checkVisibility({ visibilityProperty: true }) &&
      each.tabIndex >= 0 &&
      !each.matches(':disabled') &&
      each.closest('[inert]') === null;
    if (isUsable && (!isRadio || each.checked)) each.setAttribute('data-to-reach', '');
  }
}

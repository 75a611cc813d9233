import type { Page } from 'playwright-core';

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

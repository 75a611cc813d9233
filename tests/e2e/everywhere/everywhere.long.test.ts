import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { expectState, press } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { allViolations } from '../support/violations.ts';
import { DIALOGS, VIEWS } from './views.ts';

const { open } = pageTests();

/** A screen of 1440 × 900 as a person sees it who has enlarged everything to twice its size. */
const ENLARGED = { width: 720, height: 450 };

const APPEARANCES: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  light: async () => {},
  dark: (page) => page.emulateMedia({ colorScheme: 'dark' }),
  'at presenter size': (page) => page.keyboard.press('p'),
  'at 200 %': (page) => page.setViewportSize(ENLARGED),
  'in forced colours': (page) => page.emulateMedia({ forcedColors: 'active' }),
};

it.each(Object.entries(APPEARANCES))(
  'no view has a fault that axe can find, %s',
  async (appearance, dress) => {
    const page = await open({ stage: 'flat' });
    await dress(page);
    const found: Record<string, string[]> = {};
    for (const { name, atDesk, enter, leave } of VIEWS) {
      if (atDesk && appearance === 'at presenter size') continue;
      await enter(page);
      const faults = await allViolations(page);
      if (faults.length > 0) found[name] = faults;
      await leave(page);
    }
    await page.emulateMedia({ forcedColors: null });
    expect(found).toEqual({});
  },
);

it.each(DIALOGS.map((view) => [view.name, view] as const))(
  '%s takes the focus, keeps it, closes by Escape and gives it back',
  async (_, { enter }) => {
    const page = await open({ stage: false });
    const isInDialog = () => page.evaluate(() => document.activeElement?.closest('dialog') !== null);
    await page.getByRole('button', { name: 'Which drive?' }).focus();
    await enter(page);
    await eventually(isInDialog).toBe(true);
    for (let stop = 0; stop < 12; stop++) {
      await page.keyboard.press('Tab');
      // Between the last and the first stop lies the browser itself.
      const place = await page.evaluate(() =>
        document.activeElement === document.body
          ? 'browser'
          : document.activeElement?.closest('dialog')
            ? 'dialog'
            : 'page',
      );
      expect(place).not.toBe('page');
    }
    await page.keyboard.press('Escape');
    await eventually(() => page.locator('dialog[open]').count()).toBe(0);
    await eventually(() => page.evaluate(() => document.activeElement !== document.body)).toBe(true);
  },
);

it('tells of every trip, also of one that is like the last', async () => {
  const page = await open({ stage: false });
  await page.evaluate(() => {
    const said: string[] = [];
    (window as unknown as { said: string[] }).said = said;
    for (const region of document.querySelectorAll('[aria-live="assertive"]'))
      new MutationObserver(() => {
        if (region.textContent) said.push(region.textContent);
      }).observe(region, { childList: true, characterData: true, subtree: true });
  });
  const trips = () =>
    page.evaluate(
      () => (window as unknown as { said: string[] }).said.filter((text) => /trip/i.test(text)).length,
    );
  await page.locator('#field-Kp').fill('1e9');
  await page.locator('#field-Kp').press('Enter');
  for (const count of [1, 2]) {
    await press(page, 'Run');
    await expectState(page, 'Tripped');
    await eventually(trips).toBe(count);
    await press(page, 'Reset');
    await expectState(page, 'Paused');
  }
});

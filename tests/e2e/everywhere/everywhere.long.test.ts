import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { expectState, press } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { allViolations } from '../support/violations.ts';
import { openStudy as openTolerance, run } from '../tolerance/toleranceControls.ts';
import { goTo, unreachable } from './keyboard.ts';
import { placesAfterTurning } from './turning.ts';
import { DIALOGS, ROOMS, VIEWS } from './views.ts';

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
    await goTo(page, page.getByRole('button', { name: 'Which drive?' }));
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

it.each(ROOMS.map((view) => [view.name, view] as const))(
  '%s takes the focus, and gives it back to where it was',
  async (_, { enter, shown, leave }) => {
    const page = await open({ stage: false });
    const button = page.getByRole('button', { name: 'Which drive?' });
    await goTo(page, button);
    await enter(page);
    expect(await shown(page).evaluate((room) => room.contains(document.activeElement))).toBe(true);
    await leave(page);
    expect(await button.evaluate((each) => each === document.activeElement)).toBe(true);
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

it('every view is entered and left, and every control of it reached, by the keyboard alone', async () => {
  const page = await open({ stage: 'flat' });
  await page.evaluate(() => {
    window.addEventListener('pointerdown', () => document.body.setAttribute('data-pointer', 'used'), true);
  });
  const found: Record<string, string[]> = {};
  for (const { name, shown, enter, leave } of VIEWS) {
    await enter(page);
    expect(await shown(page).isVisible(), name).toBe(true);
    const left = await unreachable(page);
    if (left.length > 0) found[name] = left;
    await leave(page);
    expect(await page.locator('#bar').isVisible(), name).toBe(true);
  }
  expect(found).toEqual({});
  expect(await page.locator('body').getAttribute('data-pointer')).toBeNull();
});

it('nothing moves by itself in any view where motion is unwelcome', async () => {
  const page = await open({ stage: 'flat', reducedMotion: 'reduce' });
  const found: Record<string, string[]> = {};
  for (const { name, enter, leave } of VIEWS) {
    await enter(page);
    const moving = await page.evaluate(movingParts);
    if (moving.length > 0) found[name] = moving;
    await leave(page);
  }
  expect(found).toEqual({});
});

/** Runs in the page: what is animated, or would be once it changes, for longer than a millisecond. */
function movingParts(): string[] {
  const lasts = (durations: string) => durations.split(',').some((each) => Number.parseFloat(each) > 1e-3);
  const styled = [...document.querySelectorAll('*')].filter((each) => {
    const { transitionDuration, animationName, animationDuration } = getComputedStyle(each);
    return lasts(transitionDuration) || (animationName !== 'none' && lasts(animationDuration));
  });
  return [
    ...styled.map(({ tagName, className }) => `${tagName} ${className}`),
    ...document.getAnimations().map(({ id }) => `animation ${id}`),
  ];
}

it('the camera stops where it is let go where motion is unwelcome, and glides on elsewhere', async () => {
  // Small, so that the picture is soon drawn.
  const page = await open({ viewport: { width: 800, height: 600 } });
  // The last step of the hand may still have to be drawn.
  expect(await placesAfterTurning(page)).toBeLessThanOrEqual(2);
  await page.emulateMedia({ reducedMotion: 'no-preference' });
  expect(await placesAfterTurning(page)).toBeGreaterThan(3);
});

it('a group of the panel opens at once, and grows with its fields', async () => {
  const page = await open({ stage: false, reducedMotion: 'reduce' });
  const seen = await page
    .locator('#panel .panel-group-title[aria-expanded=false]')
    .evaluateAll(async ([title]) => {
      const fields = title?.nextElementSibling as HTMLElement;
      (title as HTMLElement).click();
      const heights = [];
      for (let refresh = 0; refresh < 4; refresh++) {
        await new Promise(requestAnimationFrame);
        heights.push(fields.clientHeight);
      }
      fields.append(...[1, 2, 3].map(() => document.createElement('textarea')));
      return { heights, grown: fields.clientHeight, needed: fields.scrollHeight };
    });
  expect(new Set(seen.heights).size).toBe(1);
  expect(seen.heights[0]).toBeGreaterThan(0);
  expect(seen.grown).toBeGreaterThan(seen.heights[0] ?? 0);
  expect(seen.grown).toBe(seen.needed);
});

it('tells when a tolerance study has ended', async () => {
  const page = await open({ stage: false });
  await openTolerance(page);
  await page.locator('#tolerance-runs').fill('20');
  await run(page);
  await page
    .getByRole('status')
    .filter({ hasText: /^20 machines in / })
    .waitFor();
});

it('tells when pretuning has ended', async () => {
  const page = await open({ stage: false });
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  await page.getByRole('button', { name: 'Make the pretuned values live' }).waitFor();
  // What it was judged by, where its progress was told before.
  const said = page.getByRole('status').and(page.locator('.pretune-status'));
  expect(await said.textContent()).toMatch(/^(?!.* of \d+ runs).+\.$/);
});

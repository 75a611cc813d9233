import { expect, inject, it, onTestFinished } from 'vitest';
import { SLOWLY } from '../../tools/slowly.mjs';
import { makeMove, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { FIREFOX, startFirefox } from './firefox.ts';

const { open } = pageTests();

const STIFFER = '4e6';

/** Presses a button of the group of the run. */
const PRESS_MOVE = `[...document.querySelectorAll('[role=group][aria-label=Run] button')]
  .find((button) => button.textContent.trim() === 'Move').click()`;
const FIGURES = `return [...document.querySelectorAll('.figures .figure')].map((each) => each.textContent)`;
const MOVE = `return Number(/Move (\\d+):/.exec(document.querySelector('.figures')?.textContent ?? '')?.[1] ?? 0)`;
const STATE = `return document.querySelector('#bar .clock .state')?.textContent ?? ''`;
const TYPE = `const field = document.querySelector('#field-Kp');
  field.focus();
  field.value = '${STIFFER}';
  field.dispatchEvent(new Event('input', { bubbles: true }));
  field.dispatchEvent(new Event('change', { bubbles: true }));`;

it('shows the figures of the same moves in Firefox as in Chromium, before and after tuning', async ({
  skip,
}) => {
  if (!FIREFOX) return skip('Firefox is not installed: apt-get install firefox-esr');
  const page = await open({ stage: false });
  const firefox = await startFirefox(FIREFOX);
  onTestFinished(() => firefox.close());
  await firefox.goto(inject('pageUrl'));
  await eventually(() => firefox.evaluate(STATE)).toContain('Paused');

  await page.evaluate(SLOWLY);
  await firefox.evaluate(SLOWLY);

  const seen: string[][] = [];
  for (const move of [1, 2]) {
    if (move === 2) {
      await type(page, 'Kp', STIFFER);
      await firefox.evaluate(TYPE);
    }
    await makeMove(page);
    await firefox.evaluate(PRESS_MOVE);
    await eventually(() => firefox.evaluate(MOVE)).toBe(move);
    await eventually(() => firefox.evaluate(STATE)).toContain('Paused');
    const figures = await page.locator('.figures .figure').allTextContents();
    expect(figures.length).toBeGreaterThan(3);
    expect(await firefox.evaluate(FIGURES)).toEqual(figures);
    seen.push(figures);
  }
  expect(seen[1]).not.toEqual(seen[0]);
});

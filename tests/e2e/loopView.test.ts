import { expect, it } from 'vitest';
import { choose } from './controls.ts';
import { pageTests } from './page.ts';

const { open } = pageTests();

it('shows the loop, moves its crossover by key, and the axis has the new gains', async () => {
  const page = await open({ stage: false });
  await page.keyboard.press('b');
  const figure = (label: string) =>
    page
      .getByRole('row', { name: new RegExp(`^${label}`) })
      .getByRole('cell')
      .first()
      .textContent();
  await expect.poll(() => figure('Crossover')).toMatch(/Hz$/);
  const before = Number.parseFloat((await figure('Crossover'))!);
  const gain = await page.locator('#field-Kp').inputValue();
  const handle = page.getByRole('slider', { name: 'Crossover', exact: true });
  await handle.focus();
  await page.keyboard.press('Shift+ArrowRight');
  await expect.poll(async () => Number.parseFloat((await figure('Crossover'))!) / before).toBeCloseTo(1.1, 2);
  expect(await page.locator('#field-Kp').inputValue()).not.toBe(gain);
  await page.keyboard.press('Control+z');
  await expect.poll(() => page.locator('#field-Kp').inputValue()).toBe(gain);
});

it('sets a notch on the resonance of a soft coil mounting, and the peak of the sensitivity falls', async () => {
  const page = await open({ stage: false });
  await choose(page, 'Scene', 'Heavy polishing table on a soft coil mounting');
  await page.keyboard.press('b');
  const verdict = page.locator('.loop-verdict');
  await expect.poll(() => verdict.textContent()).toContain('Stable');
  const notch = page.getByRole('slider', { name: 'Notch 1', exact: true });
  await notch.focus();
  await page.keyboard.press('Delete');
  await expect.poll(() => verdict.textContent()).toContain('Unstable');
  await page.getByRole('button', { name: 'Notch the peak', exact: true }).click();
  await expect.poll(() => verdict.textContent()).toMatch(/^Stable/);
  const placed = Number(await notch.getAttribute('aria-valuenow'));
  expect(placed).toBeGreaterThan(180);
  expect(placed).toBeLessThan(230);
});

import { expect, it } from 'vitest';
import { cancelUnderWay, openLongSearch } from './support/longSearch.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

it('compares the structures of the loop, makes the cascade live, and the axis keeps running with it', async () => {
  const page = await open({ stage: false });
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  await page.getByRole('button', { name: 'Compare structures', exact: true }).click();
  const heads = page.locator('.pretune-result thead th');
  await eventually(() => heads.allTextContents()).toEqual([
    '',
    'PID on position',
    'Cascade',
    'Cascade with observer',
    'Dual loop',
  ]);
  const rowOf = async (name: string) =>
    (
      await page
        .locator('.pretune-result tbody tr', { hasText: name })
        .first()
        .locator('td')
        .allTextContents()
    ).map(Number.parseFloat);
  // All at the peak sensitivity that was asked for, or below it.
  for (const peak of await rowOf('Peak sensitivity')) {
    expect(peak).toBeGreaterThan(1.5);
    expect(peak).toBeLessThanOrEqual(1.62);
  }
  // One machine, and a cascade that multiplies out to the PID: the two follow about equally well.
  const [pid = Number.NaN, cascade = Number.NaN] = await rowOf('Following error, RMS');
  expect(cascade / pid).toBeGreaterThan(0.7);
  expect(cascade / pid).toBeLessThan(1.4);
  expect(await page.locator('.pretune-result figure svg.drawing').count()).toBe(4);

  await page.getByRole('button', { name: 'Make live', exact: true }).nth(1).click();
  await eventually(() => page.locator('.pretune-status').textContent()).toContain('Live now: Cascade');
  await page.keyboard.press('Escape');
  expect(await page.locator('#field-controller').inputValue()).toBe('cascade');
  expect(Number(await page.locator('#field-velocityGain').inputValue())).toBeGreaterThan(1000);
  expect(await page.locator('#field-Kp').isVisible()).toBe(false);
});

it('pretunes with progress, refuses an impossible goal at its field, and leaves the gains alone when cancelled', async () => {
  const page = await open({ stage: false });
  const gain = await page.locator('#field-Kp').inputValue();
  await openLongSearch(page);
  const status = page.locator('.pretune-status');
  const limit = page.getByLabel('Peak sensitivity', { exact: true });
  await limit.fill('9');
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  expect(await page.locator('#goal-sensitivity-problem').textContent()).toContain('9 is outside 1.1 to 4');
  expect(await status.textContent()).toBe('');
  await limit.fill('1.6');
  await cancelUnderWay(page, () => page.getByRole('button', { name: 'Pretune', exact: true }).click());
  await page.keyboard.press('Escape');
  expect(await page.locator('#field-Kp').inputValue()).toBe(gain);
});

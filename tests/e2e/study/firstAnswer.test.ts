import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { violations } from '../support/violations.ts';
import { openStudy, show } from './studyControls.ts';

const { open } = pageTests();

it('has a first answer from sizing for a job that is not simulated yet', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await page.locator('#job-payload').fill('6.5');
  await page.locator('#job-payload').press('Tab');
  await page.getByText('Carry 6.5 kg over 250 mm').waitFor();
  await show(page, 'Verdict');
  const first = page.getByRole('region', { name: 'From sizing, not simulated yet' });
  await first.waitFor();
  expect(await first.locator('thead th').count()).toBe(5);
  expect(await first.locator('tbody tr', { hasText: 'By sizing' }).first().textContent()).toContain(
    'not ruled out',
  );
  expect(await first.textContent()).not.toMatch(/NaN|undefined|Infinity/);
  expect(await violations(page)).toEqual([]);
});

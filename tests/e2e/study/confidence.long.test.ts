import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { violations } from '../support/violations.ts';
import { openStudy, show } from './studyControls.ts';

const { open } = pageTests();

it('says how probable the choice is, simulates what it has drawn, and hands it over in the report', async () => {
  const page = await open({ stage: false, viewport: { width: 1440, height: 900 } });
  await openStudy(page);
  await show(page, 'Verdict');
  const odds = page.locator('.verdict-odds');
  await eventually(() => odds.textContent()).toMatch(
    /^Of 1000 jobs drawn within these ranges, by calculation, the choice stays A in 9\d\.\d % \(95 % confidence interval .+; otherwise it is B in .+ mostly because A then costs more by an amount that counts\)\.$/,
  );
  const sure = page.locator('.verdict-sure');
  await sure.locator('summary').click();
  expect(await sure.textContent()).toContain('payload ±5 %, friction ±30 %');
  expect(await violations(page)).toEqual([]);

  await sure.getByRole('button', { name: 'Simulate the moves too', exact: true }).click();
  await eventually(() => odds.textContent()).toMatch(
    /^Of \d+ jobs drawn within these ranges and simulated, /,
  );
  await sure.getByRole('button', { name: 'Stop', exact: true }).click();
  await sure.getByRole('button', { name: 'Simulate the moves too', exact: true }).waitFor();

  await page.getByRole('button', { name: 'Report …', exact: true }).click();
  const summary = page.frameLocator('iframe').locator('section.summary');
  await eventually(() => summary.textContent()).toMatch(
    /jobs drawn within these ranges and simulated, .*Ranges of the jobs drawn: payload ±5 %/s,
  );
});

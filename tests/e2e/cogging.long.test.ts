import { expect, it } from 'vitest';
import { type } from './support/controls.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

it('learns a repeated move: the error of each repeat is shown, and refuses a bandwidth that is too high', async () => {
  const page = await open({ stage: false });
  await page.locator('.panel-group-title', { hasText: /^Compensation/ }).click();
  const note = page.getByRole('region', { name: 'Learned move' });
  await type(page, 'learningBandwidth', '300 Hz');
  await note.getByRole('button', { name: 'Learn the move', exact: true }).click();
  await page
    .getByText(/Nothing was learned\. It would not converge/)
    .first()
    .waitFor();

  await type(page, 'learningBandwidth', '30 Hz');
  await note.getByRole('button', { name: 'Learn the move', exact: true }).click();
  await expect
    .poll(() => note.textContent(), { timeout: 60_000 })
    .toMatch(/Peak error of each repeat: .* below 1: it converges\. Not kept in files or links\./);
  await note.getByRole('button', { name: 'Remove what was learned', exact: true }).click();
  await expect.poll(() => note.textContent()).toContain('Nothing has been learned for a repeated move.');
});

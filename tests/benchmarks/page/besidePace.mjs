/**
 * Opens the study that comes with its results, whose four drives run side by side as soon as they are shown: simulated seconds per second.
 *
 * @param {import('playwright-core').Page} page
 * @param {number} seconds
 */
export async function besidePace(page, seconds) {
  await page.getByRole('button', { name: 'Which drive?' }).click();
  await page.getByRole('heading', { name: 'Candidate drives' }).waitFor();
  await page.locator('.study-bar').getByText('Side by side', { exact: true }).click();
  const transport = page.getByRole('group', { name: 'Run of all candidates' });
  await transport.locator('.state', { hasText: 'Running' }).waitFor();
  await page.waitForTimeout(2000);
  const now = () =>
    transport
      .locator('.time')
      .evaluate((time) => [performance.now() / 1000, Number.parseFloat(time.textContent)]);
  const [from, first] = await now();
  await page.waitForTimeout(1000 * seconds);
  const [to, last] = await now();
  return (last - first) / (to - from);
}

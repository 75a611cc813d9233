import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { openStudy, show } from './studyControls.ts';

const { open } = pageTests();

it('opens on an example with its drives sized, before anything is simulated', async () => {
  const page = await open({ stage: false, viewport: { width: 1024, height: 768 } });
  await openStudy(page);
  await show(page, 'Sizing');
  await page.getByText('All figures; each opens to its calculation').waitFor();
  const text = (await page.locator('.study').textContent()) ?? '';
  expect(text).toMatch(/RMS force/);
  expect(text).not.toMatch(/\b(NaN|undefined|Infinity|null)\b/);
});

import { expect, inject, it } from 'vitest';
import { FIRST_LOAD, scriptSizes } from '../../benchmarks/page/pageSize.mjs';
import { pageTests } from '../support/page.ts';

const { open } = pageTests();

/** What the page may be over its budget before this fails, bytes; `npm run bench` tells how much of the budget is used. */
const ROOM = 10_000;

it('loads no more than it needs to run, and the rest when it is asked for', async () => {
  const loaded = new Set<string>();
  const page = await open({
    stage: false,
    reducedMotion: 'no-preference',
    prepare: async (tab) => {
      tab.on('response', (response) => {
        const { pathname } = new URL(response.url());
        if (pathname.endsWith('.js')) loaded.add(pathname.slice(1));
      });
    },
  });
  // The loop on the bench has been analysed: the last that comes by itself.
  await page.getByText(/^Crossover of the loop now/).waitFor();
  const scripts = scriptSizes(inject('pageFolder'));
  const first = scripts.filter(({ name }) => loaded.has(name));
  expect(first.map(({ name }) => name).filter((name) => /axisWorker|analysisWorker/.test(name))).toHaveLength(
    2,
  );
  expect(first.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThan(FIRST_LOAD + ROOM);

  await page.getByText('field', { exact: true }).click();
  await page.getByRole('figure', { name: 'Inside the motor' }).waitFor({ state: 'attached' });
  await page.keyboard.press(';');
  await page.getByRole('region', { name: 'Video of the stage' }).waitFor();
  await page.keyboard.press('?');
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  const later = [...loaded].filter((name) => !first.some((script) => script.name === name));
  for (const part of ['fieldPane', 'filmPane', 'smallDialogs'])
    expect(later.filter((name) => name.includes(part))).toHaveLength(1);
});

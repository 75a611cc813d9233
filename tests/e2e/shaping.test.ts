import { expect, it } from 'vitest';
import { choose, figure, makeMove, reset, type } from './support/controls.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

it('shapes the command for the resonance of the loop: the base no longer rings, and the cost is said', async () => {
  const page = await open({ stage: false });
  const openGroup = (title: RegExp) => page.locator('.panel-group-title', { hasText: title }).click();
  await choose(page, 'Scene', 'Mould shuttle on a soft base');
  await openGroup(/^Move/);
  await type(page, 'dwell', '1000 ms');
  await openGroup(/^Limits and window/);
  await type(page, 'window', '0.1 µm');
  await makeMove(page);
  const ringing = await figure(page, 'Settling time');

  await openGroup(/^Command shaping/);
  const note = page.getByRole('region', { name: 'What the shaping costs' });
  expect(await note.textContent()).toContain('No shaping');
  await page.getByRole('button', { name: 'Shape for the loop’s resonance', exact: true }).click();
  await expect.poll(() => note.textContent()).toMatch(/Each move takes longer: input shaper \d+\.\d ms\./);
  // Half a period of the base on its 12 Hz mounts.
  const added = Number(/input shaper ([\d.]+) ms/.exec((await note.textContent()) ?? '')?.[1]);
  expect(added).toBeGreaterThan(500 / 13);
  expect(added).toBeLessThan(500 / 11);

  await reset(page);
  await makeMove(page);
  // The time of the shaper is in the settling time, and still more is gained than it costs.
  const shaped = await figure(page, 'Settling time');
  expect(shaped).toBeGreaterThan(added * 1e-3);
  expect(shaped).toBeLessThan(ringing / 2);
});

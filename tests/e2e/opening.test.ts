import { expect, it } from 'vitest';
import { DEFAULT_SCENE, SCENES } from '../../scenes/index.ts';
import { at } from '../../shared/core/at.ts';
import { choose, clock, expectState, makeMove, press } from './support/controls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

it('stands still at first for whoever asked for less motion, and runs in simulated time', async () => {
  const page = await open({ stage: false });
  expect(await page.title()).toContain('Waybench');
  await page.getByRole('heading', { name: DEFAULT_SCENE.title }).waitFor();
  await press(page, 'Run');
  await expectState(page, 'Running');
  const from = await clock(page);
  await eventually(() => clock(page)).toBeGreaterThan(from + 0.5);
  await press(page, 'Pause');
  await expectState(page, 'Paused');
});

it('works on without a network once it is loaded', async () => {
  const page = await open({ stage: false });
  // What analyses the loop comes last of all that is loaded.
  await page.getByText(/^Crossover of the loop now: \d+/).waitFor();
  await page.context().setOffline(true);
  await makeMove(page);
  await choose(page, 'Scene', at(SCENES, 1).title);
  await page.getByRole('heading', { name: at(SCENES, 1).title }).waitFor();
  await press(page, 'Run');
  await expectState(page, 'Running');
});

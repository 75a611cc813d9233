import { it } from 'vitest';
import { DEFAULT_SCENE, SCENES } from '../../scenes/index.ts';
import { choose, clock, expectState, press } from './support/controls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

it('opens with the first scene and runs it', async () => {
  const page = await open({ reducedMotion: 'no-preference' });
  await page.getByRole('heading', { name: DEFAULT_SCENE.title }).waitFor();
  await eventually(() => page.locator('.clock .time').textContent()).not.toBe('0.00000 s');
});

it('runs every scene of the shelf', async () => {
  const page = await open({ stage: false });
  for (const scene of SCENES) {
    await choose(page, 'Scene', scene.title);
    await page.getByRole('heading', { name: scene.title }).waitFor();
    await press(page, 'Run');
    await expectState(page, 'Running');
    await press(page, 'Pause');
    await expectState(page, 'Paused');
  }
});

it('shows one and the same error in the magnifier and on the gauge once it is paused', async () => {
  const page = await open();
  await press(page, 'Run');
  await eventually(() => clock(page)).toBeGreaterThan(0.3);
  await press(page, 'Pause');
  await expectState(page, 'Paused');
  const lens = page.locator('.stage-magnifier [data-number="error"]');
  const gauge = page.locator('.gauge', { hasText: 'Following error' }).locator('.gauge-value');
  const size = (text: string | null) => (text ?? '').replace('−', '');
  await eventually(async () => size(await lens.textContent())).not.toBe('');
  await eventually(async () => size(await lens.textContent()) === (await gauge.textContent())).toBe(true);
});

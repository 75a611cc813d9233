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

it('says when the graphics card has gone, and draws the machine as it was once it is back', async () => {
  const page = await open();
  const canvas = page.locator('.stage canvas').first();
  // How bright the picture is in the mean, from a screenshot: a machine whose metal mirrors nothing is nearly black.
  const brightness = async () => {
    const shot = (await canvas.screenshot()).toString('base64');
    return page.evaluate(async (data) => {
      const image = new Image();
      image.src = `data:image/png;base64,${data}`;
      await image.decode();
      const pen = new OffscreenCanvas(image.width, image.height).getContext('2d');
      if (!pen) return Number.NaN;
      pen.drawImage(image, 0, 0);
      const { data: pixels } = pen.getImageData(0, 0, image.width, image.height);
      return pixels.reduce((sum, value) => sum + value, 0) / pixels.length;
    }, shot);
  };
  const before = await brightness();
  const lose = (restore: boolean) =>
    canvas.evaluate((each: HTMLCanvasElement, back) => {
      const held = window as unknown as { card?: WEBGL_lose_context | null };
      held.card ??= each.getContext('webgl2')?.getExtension('WEBGL_lose_context') ?? null;
      if (back) held.card?.restoreContext();
      else held.card?.loseContext();
    }, restore);
  const note = page.getByText('The graphics card has stopped drawing');
  await lose(false);
  await note.waitFor();
  await lose(true);
  await note.waitFor({ state: 'hidden' });
  await eventually(async () => Math.abs((await brightness()) / before - 1)).toBeLessThan(0.03);
});

it('says so when a part of the page does not arrive, while the others still open', async () => {
  const page = await open({ stage: false });
  // A script of nothing but a mistake: one that is missing would be a fault of the page to these tests.
  const broken = /pretuneDialog/;
  await page.route(broken, (route) =>
    route.fulfill({ contentType: 'text/javascript', body: 'await import(' }),
  );
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  const refused = page.getByRole('dialog', { name: 'Pretuning did not open' });
  await refused.waitFor();
  await page.unroute(broken);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Which drive?' }).click();
  await page.getByRole('heading', { name: 'Candidate drives' }).waitFor();
});

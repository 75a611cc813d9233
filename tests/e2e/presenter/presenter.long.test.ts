import { expect, it } from 'vitest';
import { expectState, press, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { box } from './box.ts';

const { open } = pageTests();

it('a trip is told above the machine and covers nothing of it', async () => {
  const page = await open();
  await type(page, 'Kp', '1e9');
  await press(page, 'Run');
  await expectState(page, 'Tripped');
  const [banner, stage] = [await box(page, '.trip'), await box(page, '#stage')];
  expect(banner.y + banner.height).toBeLessThanOrEqual(stage.y);
});

it('at twice the size of a small window nothing lies over anything', async () => {
  const page = await open({ viewport: { width: 720, height: 450 } });
  const parts = await Promise.all(
    ['#bar', '#caption', '#stage', '#chart-area'].map((part) => box(page, part)),
  );
  for (const [k, lower] of parts.entries()) {
    const upper = parts[k - 1];
    if (upper) expect(lower.y, `part ${k}`).toBeGreaterThanOrEqual(upper.y + upper.height - 1);
  }
  expect((await box(page, '#stage')).height).toBeGreaterThan(120);
  expect((await box(page, '#panel')).x).toBeGreaterThanOrEqual(
    (await box(page, '#stage')).x + (await box(page, '#stage')).width - 1,
  );
});

it('the pen draws over the page, the keyboard stays with the run, and the same key or Escape puts it away', async () => {
  const page = await open({ stage: false });
  await page.keyboard.press('z');
  await page.mouse.move(300, 300);
  await page.mouse.down();
  await page.mouse.move(400, 350, { steps: 5 });
  await page.mouse.up();
  const drawn = await page.locator('.pen path').boundingBox();
  expect(drawn?.x).toBeCloseTo(300, -1);
  expect(drawn?.width).toBeCloseTo(100, -1);
  await page.keyboard.press('Space');
  await expectState(page, 'Running');
  await page.getByRole('button', { name: 'Wipe' }).click();
  expect(await page.locator('.pen path').count()).toBe(0);
  await page.keyboard.press('z');
  await page.locator('.pen').waitFor({ state: 'detached' });
  await page.keyboard.press('z');
  await page.locator('.pen').waitFor();
  await page.keyboard.press('Escape');
  await page.locator('.pen').waitFor({ state: 'detached' });
  await expectState(page, 'Running');
});

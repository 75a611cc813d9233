import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';

const { open } = pageTests();

const box = (page: Page) => page.getByRole('region', { name: 'Video of the stage' });

it('says so where a browser cannot record', async () => {
  const page = await open({
    stage: 'flat',
    prepare: (page) => page.addInitScript(() => Reflect.deleteProperty(globalThis, 'MediaRecorder')),
  });
  await page.keyboard.press(';');
  await box(page).getByText('This browser cannot record a video of the stage.').waitFor();
  expect(await box(page).getByRole('button', { name: 'Record', exact: true }).isDisabled()).toBe(true);
});

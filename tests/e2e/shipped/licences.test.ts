import { expect, inject, it } from 'vitest';
import { libraries } from '../../tools/libraries.mjs';
import { pageTests } from '../support/page.ts';

const { open } = pageTests();

it('names its libraries in Help and ships with their licences', async () => {
  const page = await open({ stage: false });
  await page.keyboard.press('?');
  const help = page.getByRole('dialog', { name: 'Keys' });
  await help.waitFor();
  const link = help.getByRole('link', { name: 'Licences in full' });
  const address = new URL((await link.getAttribute('href')) ?? '', inject('pageUrl'));
  const notices = await (await fetch(address)).text();
  for (const { name, version, licence, text } of libraries()) {
    expect(await help.textContent()).toContain(`${name} ${version} (${licence})`);
    expect(notices).toContain(text);
  }
});

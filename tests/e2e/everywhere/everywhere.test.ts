import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { allViolations } from '../support/violations.ts';

const { open } = pageTests();

it('the bench has no fault that axe can find, not even a minor one', async () => {
  const page = await open({ stage: 'flat' });
  expect(await allViolations(page)).toEqual([]);
});

it('the field of a dialog that has just closed keeps no key to itself', async () => {
  const page = await open({ stage: false });
  await page.evaluate(() => {
    const dialog = document.createElement('dialog');
    dialog.innerHTML = '<input type="text">';
    document.body.append(dialog);
    dialog.showModal();
    dialog.close();
    window.dispatchEvent(new KeyboardEvent('keydown', { key: 'b' }));
  });
  await page.locator('.loop-verdict', { hasText: /table/ }).waitFor();
});

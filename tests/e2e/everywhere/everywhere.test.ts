import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { allViolations } from '../support/violations.ts';

const { open } = pageTests();

it('the bench has no fault that axe can find, not even a minor one', async () => {
  const page = await open({ stage: 'flat' });
  expect(await allViolations(page)).toEqual([]);
});

import { it } from 'vitest';
import { expectFaultlessDialogs } from './support/compareDialogs.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

it.each(['light', 'dark'] as const)(
  'has dialogs, in which runs are compared, without an accessibility fault that axe can find, in %s',
  async (colorScheme) => {
    await expectFaultlessDialogs(await open({ stage: false, colorScheme }));
  },
);

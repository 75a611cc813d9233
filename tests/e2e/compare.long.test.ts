import { it } from 'vitest';
import { expectFaultlessDialogs } from './compareDialogs.ts';
import { pageTests } from './page.ts';

const { open } = pageTests();

it('the dialogs in which runs are compared have no accessibility fault that axe can find, dark', async () => {
  await expectFaultlessDialogs(await open({ stage: false, reducedMotion: 'reduce', colorScheme: 'dark' }));
});

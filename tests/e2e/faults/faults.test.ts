import { it } from 'vitest';
import { expectState, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { benchWithFault, pretuningWithFault, studyWithFault } from './faultyTasks.ts';

/* One fault in each task, a different one; the others are in the long test. */

const tests = pageTests();

pretuningWithFault(tests, 'hangs');
benchWithFault(tests, 'is killed');
studyWithFault(tests, 'throws');

it('is set up when it is loaded anew before one of its workers has arrived', async () => {
  let isAsked = false;
  const page = await tests.open({
    stage: false,
    // Never answered: the worker is on its way when the page is left.
    prepare: (page) =>
      page.route(/analysisWorker/, () => {
        isAsked = true;
      }),
  });
  await type(page, 'Kp', '1.5e6');
  await eventually(() => isAsked).toBe(true);
  await page.reload();
  await expectState(page, 'Paused');
});

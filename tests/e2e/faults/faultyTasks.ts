import { expect, it } from 'vitest';
import { closeDialog, expectState, press, type } from '../support/controls.ts';
import type { PageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { breakWorkers, type Fault, REASONS, strike } from './breakWorkers.ts';
import { beginPretuning, pretuneAgain, pretuneStatus, simulateOneDrive } from './tasks.ts';

/** The task of each of the three users, with a worker that has a fault in the middle of it. */

export function pretuningWithFault({ open }: PageTests, fault: Fault): void {
  it(`says so when a worker ${fault} while pretuning, and pretunes when asked again`, async () => {
    const page = await open({ stage: false });
    const mend = await breakWorkers(page, 'pretuneWorker', fault);
    await beginPretuning(page);
    const status = pretuneStatus(page);
    await eventually(() => status.textContent()).toMatch(/^Pretuning stopped: /);
    expect(await status.textContent()).toMatch(REASONS[fault]);
    await mend();
    await pretuneAgain(page);
  });
}

export function benchWithFault({ open }: PageTests, fault: Fault): void {
  it(`restarts a running axis whose worker ${fault}, with its tuning`, async () => {
    const page = await open({
      stage: false,
      prepare: (page) => breakWorkers(page, 'axisWorker', fault, 'by signal'),
    });
    await type(page, 'Kd', '1234');
    const tuned = await page.locator('#field-Kd').inputValue();
    await press(page, 'Run');
    await expectState(page, 'Running');
    await strike(page);
    const message = page.getByRole('dialog', { name: 'The simulation was restarted' });
    await message.waitFor();
    expect(await message.textContent()).toMatch(REASONS[fault]);
    await closeDialog(page);
    await expectState(page, 'Paused');
    expect(await page.locator('#field-Kd').inputValue()).toBe(tuned);
    await press(page, 'Run');
    await expectState(page, 'Running');
  });
}

export function studyWithFault({ open }: PageTests, fault: Fault): void {
  it(`says so at a candidate whose worker ${fault} while all are simulated`, async () => {
    const page = await open({ stage: false });
    for (const script of ['pretuneWorker', 'candidateWorker']) await breakWorkers(page, script, fault);
    await simulateOneDrive(page);
    const study = page.locator('.study');
    await eventually(() => study.textContent()).toMatch(/A: [\w ]+ stopped: /);
    expect(await study.textContent()).toMatch(REASONS[fault]);
    // Nothing is under way any more, and the page says so.
    await page.getByRole('button', { name: 'Simulate all' }).first().waitFor();
  });
}

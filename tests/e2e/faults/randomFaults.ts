import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { seeded } from '../../../shared/core/seeded.ts';
import { writeScene } from '../../../shared/files/sceneFile.ts';
import { SEED } from '../../fuzz/counts.ts';
import { closeDialog, expectState, press, type } from '../support/controls.ts';
import type { PageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import * as tolerance from '../tolerance/toleranceControls.ts';
import { breakWorkers, FAULTS, REASONS, strike } from './breakWorkers.ts';
import { beginPretuning, pretuneAgain, pretuneStatus, simulateOneDrive } from './tasks.ts';

/** A task in whose midst a worker fails. */
interface Task {
  /** Of its workers. */
  readonly scripts: readonly string[];
  begin(page: Page): Promise<unknown>;
  /** What the page says of the task: that it is under way, how it ended. */
  said(page: Page): Promise<string | null>;
  /** Said once it has come to its end before the fault did. */
  readonly done: RegExp;
  /** Begins it again and cancels it; the page has to say so. */
  again(page: Page): Promise<unknown>;
}

const TASKS: Readonly<Record<string, Task>> = {
  pretuning: {
    scripts: ['pretuneWorker'],
    begin: beginPretuning,
    said: (page) => pretuneStatus(page).textContent(),
    done: /^(?!Starting)(?!.* of \d+ runs)(?!.*stopped).+/,
    again: pretuneAgain,
  },
  'a tolerance study': {
    scripts: ['toleranceWorker'],
    async begin(page) {
      await tolerance.openStudy(page);
      await page.locator('#tolerance-runs').fill('5000');
      await tolerance.run(page);
    },
    said: tolerance.status,
    done: /^5000 machines in/,
    async again(page) {
      await tolerance.dialog(page).getByRole('button', { name: 'Try again', exact: true }).click();
      await eventually(() => tolerance.status(page)).toMatch(/machines have run/);
      await tolerance.dialog(page).getByRole('button', { name: 'Cancel', exact: true }).click();
      await eventually(() => tolerance.status(page)).toMatch(/^Cancelled/);
    },
  },
  'the simulation of a study': {
    scripts: ['pretuneWorker', 'candidateWorker'],
    begin: simulateOneDrive,
    said: (page) => page.locator('.simulate-bar').first().textContent(),
    done: /All drives are tuned and simulated/,
    async again(page) {
      const bar = page.locator('.simulate-bar').first();
      const simulate = bar.getByRole('button', { name: 'Simulate all' });
      await simulate.click();
      await simulate.waitFor({ state: 'hidden' });
      await bar.getByRole('button', { name: 'Cancel', exact: true }).click();
      await simulate.waitFor();
    },
  },
};

const tuned = (page: Page) => page.locator('#field-Kd').inputValue();

/** Tuned by hand before anything happens: it has to be there afterwards. */
async function tuneByHand(page: Page): Promise<string> {
  await type(page, 'Kd', '1234');
  return tuned(page);
}

/**
 * So many faults, each of a kind, in a task and at an instant that are drawn. That it is told within two seconds is for the tests of the
 * watchdog, which count looks; here it has to be told at all, and everything else has to go on.
 */
export function randomFaults({ open }: PageTests, count: number): void {
  const random = seeded(SEED);
  const among = <T>(all: readonly T[]): T => at(all, Math.floor(random() * all.length));
  for (let k = 0; k < count; k++) {
    const fault = among(FAULTS);
    const task = among([...Object.keys(TASKS), 'the running bench', 'opening a file']);
    // From the first message to the middle of it, ms.
    const instant = Math.round(4000 * random() ** 2);
    const name = `${k + 1}: a worker ${fault} ${instant} ms after the begin of ${task}`;
    const { scripts, begin, said, done, again } = TASKS[task] ?? {};
    it(name, async () => {
      if (!scripts || !begin || !said || !done || !again) {
        await duringTheRun(open, fault, instant, task === 'opening a file');
        return;
      }
      const page = await open({ stage: false });
      const kept = await tuneByHand(page);
      const ends = await Promise.all(scripts.map((script) => breakWorkers(page, script, fault, 'by signal')));
      await begin(page);
      await page.waitForTimeout(instant);
      // A worker that was still on its way when it was struck has heard nothing of it.
      const struck = async () => {
        await strike(page);
        return said(page);
      };
      await eventually(struck).toMatch(new RegExp(`stopped: |${done.source}`));
      for (const end of ends) await end();
      const words = await said(page);
      if (!words || done.test(words)) return;
      expect(words).toMatch(REASONS[fault]);
      await again(page);
      expect(await tuned(page)).toBe(kept);
    });
  }
}

/** The simulation of the bench is restarted with its tuning or, when a file was opened, with what came from the file. */
async function duringTheRun(
  open: PageTests['open'],
  fault: (typeof FAULTS)[number],
  instant: number,
  isFileOpened: boolean,
): Promise<void> {
  const page = await open({
    stage: false,
    prepare: (page) => breakWorkers(page, 'axisWorker', fault, 'by signal'),
  });
  let kept = await tuneByHand(page);
  await press(page, 'Run');
  await expectState(page, 'Running');
  await page.waitForTimeout(instant);
  if (isFileOpened) {
    const scene = { ...at(SCENES, 1), id: null, title: 'Opened in the midst of it' };
    const chooser = page.waitForEvent('filechooser');
    await page.keyboard.press('Control+o');
    const buffer = Buffer.from(writeScene(scene));
    const opening = (await chooser).setFiles({ name: 'a.json', mimeType: 'application/json', buffer });
    await strike(page);
    await opening;
    await page.getByRole('heading', { name: scene.title }).waitFor();
    kept = await tuned(page);
  } else await strike(page);
  const message = page.getByRole('dialog', { name: 'The simulation was restarted' });
  await message.waitFor();
  expect(await message.textContent()).toMatch(REASONS[fault]);
  await closeDialog(page);
  await expectState(page, 'Paused');
  expect(await tuned(page)).toBe(kept);
  await press(page, 'Run');
  await expectState(page, 'Running');
}

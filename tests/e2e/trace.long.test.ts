import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../scenes/index.ts';
import { present } from '../../shared/core/at.ts';
import { CHANNEL_NAMES } from '../../shared/core/channels.ts';
import { ranged } from '../../shared/core/format.ts';
import { loadSideMass, motorSideMass } from '../../shared/core/movedMass.ts';
import { measureRun } from '../../workers/run/measureRun.ts';
import { figureText, makeMove } from './support/controls.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

it('fits the moved mass to a recording and puts it on the bench', async () => {
  const scene = DEFAULT_SCENE;
  const heavier = { ...scene, parameters: { ...scene.parameters, payload: scene.parameters.payload + 3 } };
  const rows: string[] = [];
  const recorded = measureRun(heavier, 1, (record) => rows.push(record.join(',')));
  const path = join(mkdtempSync(join(tmpdir(), 'trace-')), 'recording.csv');
  writeFileSync(path, [CHANNEL_NAMES.join(','), ...rows].join('\n'));

  const page = await open({ stage: false });
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByText('Measured trace …', { exact: true }).click();
  await page.locator('#trace-file').setInputFiles(path);
  await page.getByRole('button', { name: 'Fit', exact: true }).click();
  const mass = page
    .getByRole('row', { name: /^Moved mass/ })
    .getByRole('cell')
    .first();
  await mass.waitFor();
  const truth = motorSideMass(heavier.parameters) + loadSideMass(heavier.parameters);
  expect(Number.parseFloat(present(await mass.textContent())) / truth).toBeCloseTo(1, 2);
  await page.getByRole('button', { name: 'Put the fitted values on the bench', exact: true }).click();
  await page.getByRole('button', { name: 'Show over the charts', exact: true }).click();
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Pinned', exact: true }).waitFor();
  await makeMove(page);
  await page.getByRole('button', { name: 'Differences', exact: true }).click();
  const differences = page.getByRole('dialog', { name: 'Differences from the measured trace' });
  const cells = differences.getByRole('row', { name: /^Following error, peak/ }).getByRole('cell');
  expect((await cells.allTextContents()).slice(0, 2)).toEqual([
    // Of both moves, as the second begins within the recording.
    ranged(recorded.peakFollowingError, 'm'),
    await figureText(page, 'Following error, peak'),
  ]);
  await page.keyboard.press('Escape');
  await page.getByPlaceholder('Find a parameter').fill('payload');
  expect(Number(await page.locator('#field-payload').inputValue()) / heavier.parameters.payload).toBeCloseTo(
    1,
    1,
  );
});

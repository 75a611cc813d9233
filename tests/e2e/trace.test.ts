import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../scenes/index.ts';
import { at, present } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { loadSideMass, motorSideMass } from '../../shared/core/movedMass.ts';
import { measureRun } from '../../workers/run/measureRun.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

it('reads a German recording behind a preamble in counts and milliamperes, and refuses one in the wrong unit', async () => {
  const scene = DEFAULT_SCENE;
  const comma = (value: number, digits: number) => value.toFixed(digits).replace('.', ',');
  const rows: string[] = [];
  measureRun(scene, 1, (record) => {
    const counts = Math.round(at(record, C.encoderPosition) / scene.parameters.encoderResolution);
    const current = (1e3 * at(record, C.forceCurrent)) / Math.SQRT2;
    rows.push([comma(1e3 * at(record, C.time), 3), counts, comma(current, 2)].join(';'));
  });
  const path = join(mkdtempSync(join(tmpdir(), 'trace-')), 'aufzeichnung.csv');
  const preamble = ['Aufzeichnung 7, Formenpresse', 'Datum;02.03.2026 14:22', ''];
  writeFileSync(path, [...preamble, 'Zeit [ms];Lage Ist [Inkr];Iststrom [mA eff]', ...rows].join('\r\n'));

  const page = await open({ stage: false });
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByText('Measured trace …', { exact: true }).click();
  await page.locator('#trace-file').setInputFiles(path);
  expect(await page.getByLabel('Line of the header').inputValue()).toBe('4');
  expect(await page.getByLabel('Unit of: Force current').inputValue()).toBe('mA RMS');
  await page.getByRole('button', { name: 'Fit', exact: true }).click();
  const mass = page
    .getByRole('row', { name: /^Moved mass/ })
    .getByRole('cell')
    .first();
  await mass.waitFor();
  const truth = motorSideMass(scene.parameters) + loadSideMass(scene.parameters);
  expect(Number.parseFloat(present(await mass.textContent())) / truth).toBeCloseTo(1, 1);

  await page.getByLabel('Unit of: Force current').selectOption('A RMS');
  await page.getByRole('button', { name: 'Fit', exact: true }).click();
  await page.getByText('Fitted, but not plausible: the values are not offered.').waitFor();
  await page.getByText(/The unit of the current is probably wrong: column 3/).waitFor();
  const apply = page.getByRole('button', { name: 'Put the fitted values on the bench', exact: true });
  expect(await apply.isDisabled()).toBe(true);
});

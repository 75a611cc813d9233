import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { sceneById } from '../../scenes/index.ts';
import { at, present } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { movedMass } from '../../shared/core/movedMass.ts';
import { PARAMETERS, type ParameterName } from '../../shared/core/parameters/table.ts';
import { toSI } from '../../shared/core/units.ts';
import { startingPoint } from '../../shared/protocol/analysis.ts';
import { responseRows } from '../../src/app/save/responseRows.ts';
import { analyse } from '../../workers/analysis/analyse.ts';
import { measureRun } from '../../workers/run/measureRun.ts';
import { choose, makeMove, type } from './support/controls.ts';
import { longestSheet } from './support/longestSheet.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';
import { allViolations } from './support/violations.ts';

const { blank, open } = pageTests();

const TEMPLATE = sceneById('soft-coil-mounting');

/** What the datasheet prints, as it prints it, and the same in SI by the definitions of √2, wye connection, inch and pound-force. */
const DATASHEET: readonly (readonly [name: ParameterName, typed: string, si: number])[] = [
  ['forceConstant', '40 N/Apk', 40 * Math.SQRT2],
  ['resistance', '1.7 ohm ph', 3.4],
  ['inductance', '0.9 mH ph', 1.8e-3],
  ['polePitch', '1.25 in', 0.03175],
  ['continuousForce', '65 lbf', 65 * 4.4482216152605],
  ['continuousCurrent', '5.2 Arms', 5.2 * Math.SQRT2],
  ['peakCurrent', '16 Arms', 16 * Math.SQRT2],
  ['busVoltage', '310 VDC', 310],
];

/** The machine in the works: motor of the datasheet, and a load and a coil mounting that nobody has measured. */
const MACHINE = {
  ...TEMPLATE,
  parameters: {
    ...TEMPLATE.parameters,
    ...Object.fromEntries(DATASHEET.map(([name, , si]) => [name, si])),
    payload: 14,
    linkStiffness: 2.9e6,
  },
};

/** Its recording as a drive writes it: a preamble, semicolons, decimal commas, milliseconds, counts, milliamperes RMS. */
function recording(): string {
  const comma = (value: number, digits: number) => value.toFixed(digits).replace('.', ',');
  const rows: string[] = [];
  measureRun(MACHINE, 2, (record) => {
    const counts = Math.round(at(record, C.encoderPosition) / MACHINE.parameters.encoderResolution);
    const current = (1e3 * at(record, C.forceCurrent)) / Math.SQRT2;
    rows.push([comma(1e3 * at(record, C.time), 3), counts, comma(current, 1)].join(';'));
  });
  const preamble = ['Aufzeichnung 12, Polierachse', 'Datum;02.03.2026 14:22', ''];
  return [...preamble, 'Zeit [ms];Lage Ist [Inkr];Iststrom [mA eff]', ...rows].join('\r\n');
}

/** Its open loop as an analyser writes it: Hz, dB, degrees. */
function frequencyResponse(): string {
  const { parameters } = MACHINE;
  const analysis = analyse(parameters, { ...startingPoint(parameters), friction: 'sliding' });
  const rows = responseRows(analysis).map((row) => row.slice(0, 3).join(';'));
  return ['Polishing axis, open loop', ...rows].join('\n');
}

const field = (page: Page, name: ParameterName) => page.locator(`#field-${name}`);

/** The value that a field shows, SI. */
async function shown(page: Page, name: ParameterName): Promise<number> {
  await page.getByPlaceholder('Find a parameter').fill(name);
  const row = PARAMETERS[name];
  if (row.kind !== 'number') throw new Error(`${name} is not a number`);
  return toSI(Number(await field(page, name).inputValue()), row.unit);
}

async function fromFile(page: Page, item: string): Promise<void> {
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByText(item, { exact: true }).click();
}

/** The estimate in a row of a fit. */
async function fitted(page: Page, label: RegExp): Promise<number> {
  const cell = page.getByRole('row', { name: label }).getByRole('cell').first();
  await cell.waitFor();
  return Number.parseFloat(present(await cell.textContent()));
}

it('takes a datasheet, a recording and a measured response to a cascade gain sheet, figure by figure', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'axis-'));
  const traceFile = join(folder, 'aufzeichnung.csv');
  const responseFile = join(folder, 'response.csv');
  writeFileSync(traceFile, recording());
  writeFileSync(responseFile, frequencyResponse());
  const page = await open({ stage: false });
  await choose(page, 'Scene', TEMPLATE.title);

  for (const [name, typed, si] of DATASHEET) {
    await page.getByPlaceholder('Find a parameter').fill(name);
    await type(page, name, typed);
    expect((await shown(page, name)) / si, name).toBeCloseTo(1, 3);
  }

  await fromFile(page, 'Measured trace …');
  await page.locator('#trace-file').setInputFiles(traceFile);
  expect(await page.getByLabel('Line of the header').inputValue()).toBe('4');
  await page.getByRole('button', { name: 'Fit', exact: true }).click();
  const truth = movedMass(MACHINE.parameters);
  expect((await fitted(page, /^Moved mass/)) / truth).toBeCloseTo(1, 1);
  await page.getByRole('button', { name: 'Put the fitted values on the bench', exact: true }).click();
  await page.keyboard.press('Escape');
  expect(Math.abs((await shown(page, 'payload')) - MACHINE.parameters.payload)).toBeLessThan(0.02 * truth);

  await fromFile(page, 'Measured frequency response …');
  await page.locator('#response-file').setInputFiles(responseFile);
  await page.getByRole('button', { name: 'Show and fit', exact: true }).click();
  await page.getByRole('button', { name: 'Put the fitted values on the bench', exact: true }).click();
  await page.getByText(/The bench has the fitted values.*Pretune to design on/).waitFor();
  await page.keyboard.press('Escape');
  expect((await shown(page, 'linkStiffness')) / MACHINE.parameters.linkStiffness).toBeCloseTo(1, 1);

  await page.getByPlaceholder('Find a parameter').fill('controller');
  await field(page, 'controller').selectOption('cascade');
  await page.getByPlaceholder('Find a parameter').fill('');
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  await page.getByLabel('Peak sensitivity', { exact: true }).fill('1.6');
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  await page.getByRole('button', { name: 'Make the pretuned values live', exact: true }).click();
  await eventually(() => page.locator('.pretune-status').textContent()).toMatch(/^Live now: /);
  await page.keyboard.press('Escape');
  await makeMove(page);

  await fromFile(page, 'Gain sheet');
  const sheet = page.getByRole('dialog', { name: 'Gain sheet' });
  const download = page.waitForEvent('download');
  await sheet.getByRole('button', { name: 'Save JSON' }).click();
  const chunks = await (await (await download).createReadStream()).toArray();
  const { parameters, sections } = JSON.parse(Buffer.concat(chunks).toString());
  await sheet.getByRole('button', { name: 'Close' }).click();

  // The sheet has the gains of the panel, and a drive's own units follow from the datasheet's force constant.
  expect(parameters.controller).toBe('cascade');
  for (const name of ['positionLoopGain', 'velocityGain', 'resetTime'] as const)
    expect((await shown(page, name)) / parameters[name], name).toBeCloseTo(1, 3);
  const cascade = sections.find(({ id }: { id: string }) => id === 'cascade');
  const value = (unit: string) =>
    cascade.rows.find((row: { unit?: string; label: string }) => row.unit === unit)?.value;
  expect(value('A peak/(m/s)') / (parameters.velocityGain / 40)).toBeCloseTo(1, 5);
  const asked = sections.find(({ id }: { id: string }) => id === 'asked');
  const [wanted, reached] = asked.rows;
  expect([wanted.label, wanted.value]).toEqual(['Peak sensitivity, asked for', 1.6]);
  expect(reached.value).toBeLessThan(1.62);
  expect(asked.text).toEqual(['The gains are as pretuning set them.']);
  expect(value('(m/min)/mm') / (0.06 * parameters.positionLoopGain)).toBeCloseTo(1, 6);

  // On the machine itself, which the page has never seen, the loop is as robust as was asked for, and the moves settle.
  const tuned = { ...MACHINE, parameters: { ...MACHINE.parameters, ...parameters } };
  const loop = analyse(tuned.parameters, { ...startingPoint(tuned.parameters), friction: 'sliding' });
  expect(1 / loop.figures.modulusMargin.value).toBeLessThan(1.62);
  const before = measureRun(MACHINE, 2);
  const after = measureRun(tuned, 2);
  expect(after.trip).toBeNull();
  expect(present(after.settlingTime)).toBeLessThan(present(before.settlingTime));
  expect(after.rmsFollowingError).toBeLessThan(before.rmsFollowingError);
});

it('has no accessibility fault that axe can find', async () => {
  const page = await blank({ colorScheme: 'dark' });
  await page.setContent(longestSheet());
  expect(await allViolations(page)).toEqual([]);
});

import { expect, it } from 'vitest';
import { expectState, figureText, makeMove, reset, type } from './support/controls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

it('puts a tuned scene into a link that opens as it was', async () => {
  const page = await open({ stage: false });
  await type(page, 'Kp', '1.5e6');
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Copy link' }).click();
  await eventually(() => page.url()).toContain('#');
  await page.reload();
  await expectState(page, 'Paused');
  expect(await page.locator('#field-Kp').inputValue()).toBe('1.5e6');
});

it('gives the project a name, which gain sheet and files carry, and saves recording and responses', async () => {
  const page = await open({ stage: false });
  await makeMove(page);
  const menu = async (item: string) => {
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await page.getByText(item, { exact: true }).click();
  };
  await menu('Name of the project …');
  await page.getByLabel('Name', { exact: true }).fill('Mould press 7, loading axis');
  await page.getByRole('button', { name: 'Use this name', exact: true }).click();
  const saved = async (item: string) => {
    const [download] = await Promise.all([page.waitForEvent('download'), menu(item)]);
    const chunks = await (await download.createReadStream()).toArray();
    return { name: download.suggestedFilename(), text: Buffer.concat(chunks).toString('utf8') };
  };
  const recording = await saved('Save recording in view (CSV)');
  expect(recording.name).toBe('mould-press-7-loading-axis-recording.csv');
  const lines = recording.text.trim().split('\r\n');
  expect(lines.length).toBeGreaterThan(1000);
  expect(lines[1]?.split(',').every((cell) => Number.isFinite(Number(cell)))).toBe(true);
  const responses = await saved('Save frequency responses (CSV)');
  expect(responses.name).toBe('mould-press-7-loading-axis-loop.csv');
  expect(responses.text).toMatch(/frequency \[Hz\],L \[dB\],L \[deg\]/);
  const drawing = await saved('Save frequency response (SVG)');
  expect(drawing.text).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
  expect(drawing.text).not.toContain('var(--');
  await menu('Gain sheet');
  const sheet = page.frameLocator('iframe[title="Gain sheet as printed"]');
  await sheet.getByText('Mould press 7, loading axis').first().waitFor();
});

it('saves a tuning session, and replays it to the same figures', async () => {
  const page = await open({ stage: false });
  await type(page, 'Kp', '1.5e6');
  await makeMove(page);
  const peak = await figureText(page, 'Following error, peak');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Save tuning session', exact: true }).click();
  const buffer = Buffer.concat(await (await (await saved).createReadStream()).toArray());

  await page.locator('#field-Kp').fill('2e6');
  await page.locator('#field-Kp').press('Enter');
  await reset(page);
  await makeMove(page);
  expect(await figureText(page, 'Following error, peak')).not.toBe(peak);
  const chooser = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  await (await chooser).setFiles({ name: 'one.session.json', mimeType: 'application/json', buffer });
  await page.locator('.note', { hasText: 'The replay has finished.' }).waitFor();
  expect(await figureText(page, 'Following error, peak')).toBe(peak);
});

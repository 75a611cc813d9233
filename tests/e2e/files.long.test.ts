import { expect, it } from 'vitest';
import { expectState, makeMove, type } from './support/controls.ts';
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

import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterEach, beforeEach, expect, inject, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { closeDialog, expectState, type } from '../support/controls.ts';
import { foldAway } from '../support/page.ts';
import { eventually, patience } from '../support/patience.ts';
import { pressUntil } from '../support/pressUntil.ts';
import { plainHost } from './plainHost.ts';

let folder: string;
let host: Awaited<ReturnType<typeof plainHost>>;
let browser: Browser;
let page: Page;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'waybench-'));
  await cp(inject('pageFolder'), folder, { recursive: true });
  host = await plainHost(folder);
  browser = await chromium.connect(inject('browserEndpoint'), { timeout: 0 });
  const context = await browser.newContext({
    reducedMotion: 'reduce',
    viewport: { width: 800, height: 500 },
  });
  context.setDefaultTimeout(patience());
  page = await context.newPage();
  await foldAway(page);
  await page.goto(host.url);
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
});

afterEach(async () => {
  await browser.close();
  await host.close();
  await rm(folder, { recursive: true });
});

it('opens without its host, with every part that is loaded later', async () => {
  await host.close();
  await page.reload();
  await expectState(page, 'Paused');
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  await page.getByRole('dialog', { name: 'Automatic pretuning' }).waitFor();
  await closeDialog(page);
  await pressUntil(page, 'e', page.locator('iframe[title="Gain sheet as printed"]'));
  await closeDialog(page);
  await pressUntil(page, 'o', page.getByRole('dialog', { name: 'Lessons' }));
  await closeDialog(page);
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Measured trace …' }).click();
  await page.getByRole('dialog', { name: 'Measured trace' }).waitFor();
  await closeDialog(page);
  await pressUntil(page, 'w', page.getByRole('button', { name: 'Back to the bench' }));
  await page.getByText('All drives are tuned and simulated.').waitFor();
});

/** As a new build leaves it: the page says something else, and the script knows the build by another name. */
async function publishNewer(): Promise<void> {
  const index = join(folder, 'index.html');
  await writeFile(index, (await readFile(index, 'utf8')).replace('<title>Waybench<', '<title>Newer bench<'));
  const script = join(folder, 'offlineWorker.js');
  const code = await readFile(script, 'utf8');
  const changed = code.replace(/"[0-9a-f]{12}"/, '"feedfeedfeed"');
  expect(changed).not.toBe(code);
  await writeFile(script, changed);
}

it('offers a newer build, goes on with the present one until it is accepted, and keeps what was made', async () => {
  await type(page, 'Kp', '1.5e6');
  await publishNewer();
  await page.reload();
  const offer = page.getByRole('region', { name: 'Newer version' });
  await offer.waitFor();
  expect(await page.title()).toBe('Waybench');
  await type(page, 'Kp', '1.6e6');
  await offer.getByRole('button', { name: 'Use it now' }).click();
  await eventually(() => page.title()).toBe('Newer bench');
  await page.getByRole('button', { name: 'Continue where you left off' }).click();
  await eventually(() => page.locator('#field-Kp').inputValue()).toBe('1.6e6');
});

it('can be installed: its manifest names icon and start', async () => {
  const manifest = JSON.parse(await readFile(join(folder, 'manifest.webmanifest'), 'utf8'));
  expect(await page.locator('link[rel=manifest]').getAttribute('href')).toBe('./manifest.webmanifest');
  const files = await readdir(folder);
  for (const { src } of manifest.icons) expect(files).toContain(present(/^\.\/(.+)$/.exec(src)?.[1]));
  expect(new URL(manifest.start_url, host.url).href).toBe(host.url);
});

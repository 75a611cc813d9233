import { accessSync, constants, statSync } from 'node:fs';
import { homedir } from 'node:os';
import { delimiter, join } from 'node:path';
import { env, platform } from 'node:process';

/** Names on PATH and fixed places of browsers that Playwright can drive: all are Chromium inside. */
const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
];

const PLACES = {
  linux: () => [
    '/usr/lib/chromium/chromium',
    '/snap/bin/chromium',
    '/opt/google/chrome/chrome',
    '/opt/microsoft/msedge/msedge',
  ],
  darwin: () =>
    ['/Applications', join(homedir(), 'Applications')].flatMap((folder) =>
      ['Chromium', 'Google Chrome', 'Microsoft Edge'].map((app) =>
        join(folder, `${app}.app`, 'Contents', 'MacOS', app),
      ),
    ),
  win32: () =>
    [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA]
      .filter(Boolean)
      .flatMap((folder) => [
        join(folder, 'Chromium', 'Application', 'chrome.exe'),
        join(folder, 'Google', 'Chrome', 'Application', 'chrome.exe'),
        join(folder, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
      ]),
};

/** Absolute path of a Chromium on this machine, or null. `CHROME_PATH` decides if it is set. */
export async function findBrowser() {
  if (env.CHROME_PATH) {
    if (isExecutable(env.CHROME_PATH)) return env.CHROME_PATH;
    throw new Error(`CHROME_PATH is "${env.CHROME_PATH}", which is not a program that can be run.`);
  }
  const suffix = platform === 'win32' ? '.exe' : '';
  const onPath = (env.PATH ?? '')
    .split(delimiter)
    .filter(Boolean)
    .flatMap((folder) => NAMES.map((name) => join(folder, name + suffix)));
  const installed = [...onPath, ...(PLACES[platform]?.() ?? [])].find(isExecutable);
  return installed ?? (await downloadedBrowser());
}

/**
 * Starts the browser headless. Playwright itself gives it a new temporary profile, leaves out the sandbox (which root
 * and containers cannot have; the only page opened is our own) and switches off first-run pages, sync, component
 * updates and background networking. No graphics flags: WebGL comes up by itself, and forcing a software rasteriser
 * makes drawing slower.
 */
export async function launchBrowser() {
  const { chromium } = await import('playwright-core');
  return chromium.launch({ executablePath: await browserPath() });
}

/** The same, for several processes to connect to. */
export async function serveBrowser() {
  const { chromium } = await import('playwright-core');
  return chromium.launchServer({ executablePath: await browserPath() });
}

async function browserPath() {
  const path = await findBrowser();
  if (!path) throw new Error('No Chromium found. `npm test` installs one; CHROME_PATH names one.');
  return path;
}

async function downloadedBrowser() {
  try {
    const { chromium } = await import('playwright-core');
    const path = chromium.executablePath();
    return isExecutable(path) ? path : null;
  } catch {
    return null; // Playwright is not installed yet, or has no build for this platform.
  }
}

function isExecutable(path) {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

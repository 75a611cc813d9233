import type { Locator, Page } from 'playwright-core';
import { openLoop } from '../support/loopControls.ts';
import { pressUntil } from '../support/pressUntil.ts';
import { choose, goTo, leaveField, use } from './keyboard.ts';

/** A view of the page: how a person comes to it from the bench by the keyboard alone, and back. */
export interface View {
  readonly name: string;
  /** Opened by what the presenter size has no room for. */
  readonly atDesk?: true;
  /** What then has to hold the focus. */
  shown(page: Page): Locator;
  enter(page: Page): Promise<unknown>;
  leave(page: Page): Promise<unknown>;
}

type Title = string | RegExp;

const dialog = (page: Page, name: Title) => page.getByRole('dialog', { name });
const named = (page: Page, name: Title) =>
  page.getByRole('button', { name, exact: true }).filter({ visible: true });

async function pressKey(page: Page, key: string, wanted: Locator): Promise<void> {
  await leaveField(page);
  await pressUntil(page, key, wanted);
}

/** By Escape; where the page that is shown in it has the focus, that is left first. */
async function closeDialog(page: Page): Promise<void> {
  const open = page.locator('dialog[open]');
  if (await page.evaluate(() => document.activeElement?.tagName === 'IFRAME'))
    await goTo(page, open.getByRole('button', { name: /^(Close|Cancel)/ }));
  await page.keyboard.press('Escape');
  await open.waitFor({ state: 'hidden' });
}

/** What opens by a key, and closes by Escape. */
const byKey = (name: string, key: string, title: Title): View => ({
  name,
  shown: (page) => dialog(page, title),
  enter: (page) => pressKey(page, key, dialog(page, title)),
  leave: closeDialog,
});

/** What a menu or the panel opens, and Escape closes. */
const byButton = (name: string, buttons: readonly string[], title: Title): View => ({
  name,
  atDesk: true,
  shown: (page) => dialog(page, title),
  async enter(page) {
    for (const label of buttons) await use(page, named(page, label).first());
    await dialog(page, title).waitFor();
  },
  leave: closeDialog,
});

/** Opens over the bench, and is closed by Escape: the focus goes into it, and comes back. */
export const DIALOGS: readonly View[] = [
  byKey('keys', '?', 'Keys'),
  byKey('snapshots', 's', /snapshots/i),
  byKey('lessons', 'o', 'Lessons'),
  byButton('how this is tested', ['Help', 'How this is tested'], 'How this is tested'),
  byButton('pretuning', ['Pretune …'], 'Automatic pretuning'),
  byButton('tolerances', ['How sure is this? …'], 'How sure is this?'),
  byButton('measured trace', ['File', 'Measured trace …'], 'Measured trace'),
  byButton('measured response', ['File', 'Measured frequency response …'], 'Measured frequency response'),
  byButton('earlier work', ['File', 'Earlier work …'], 'Earlier work'),
  byButton('cautions', ['Help', 'Before you touch real hardware'], 'Before you touch real hardware'),
];

const GAIN_SHEET: View = byKey('gain sheet', 'e', 'Gain sheet');

const LOOP: View = {
  name: 'loop',
  shown: (page) => page.locator('#chart-area'),
  async enter(page) {
    await leaveField(page);
    await openLoop(page);
  },
  async leave(page) {
    await leaveField(page);
    await page.keyboard.press('b');
    await page.locator('.loop-verdict').waitFor({ state: 'hidden' });
  },
};

/** Stands in the place of the bench, or at its side, with the focus, which goes back to where it was. */
export const ROOMS: readonly View[] = [
  {
    name: 'two axes',
    shown: (page) => page.locator('.beside'),
    async enter(page) {
      await pressKey(page, 'u', page.getByRole('region', { name: 'Candidate B:' }));
    },
    leave: backToBench,
  },
  {
    name: 'a lesson',
    shown: (page) => page.getByRole('complementary', { name: 'Lesson' }),
    async enter(page) {
      const menu = dialog(page, 'Lessons');
      await pressKey(page, 'o', menu);
      await use(page, menu.getByRole('button', { name: /^Start / }).first());
      await page.getByRole('complementary', { name: 'Lesson' }).waitFor();
    },
    async leave(page) {
      await use(page, named(page, 'End lesson'));
      await page.getByRole('complementary', { name: 'Lesson' }).waitFor({ state: 'hidden' });
    },
  },
  {
    name: 'study: Job',
    shown: (page) => page.locator('.study'),
    enter: openStudy,
    leave: backToBench,
  },
];

async function openStudy(page: Page): Promise<void> {
  await pressKey(page, 'w', page.locator('.study-bar'));
}

async function backToBench(page: Page): Promise<void> {
  await use(page, named(page, 'Back to the bench'));
  await page.locator('#bar').waitFor();
}

const part = (name: string): View => ({
  name: `study: ${name}`,
  shown: (page) => page.locator('.study'),
  async enter(page) {
    await openStudy(page);
    await choose(page, 'Part of the study', name);
  },
  async leave(page) {
    await choose(page, 'Part of the study', 'Job');
    await backToBench(page);
  },
});

/** What opens over a part of the study. */
const overStudy = (name: string, labels: readonly Title[], title: Title): View => ({
  name: `study: ${name}`,
  shown: (page) => dialog(page, title),
  async enter(page) {
    await openStudy(page);
    for (const label of labels) await use(page, named(page, label).first());
    await dialog(page, title).waitFor();
  },
  async leave(page) {
    await closeDialog(page);
    await backToBench(page);
  },
});

/** Every view of the page. */
export const VIEWS: readonly View[] = [
  {
    name: 'bench',
    shown: (page) => page.locator('#bench'),
    enter: async () => {},
    leave: async () => {},
  },
  LOOP,
  GAIN_SHEET,
  ...ROOMS,
  ...DIALOGS,
  ...['Sizing', 'Side by side', 'Heat', 'Accuracy', 'Verdict'].map(part),
  overStudy('own datasheet', ['Own datasheet …'], 'Own datasheet'),
  overStudy('report', ['File', 'Report'], 'Report'),
];

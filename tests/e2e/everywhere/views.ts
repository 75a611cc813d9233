import type { Page } from 'playwright-core';
import { type Part, show } from '../study/studyControls.ts';
import { closeDialog, pressFor } from '../support/controls.ts';
import { openLoop } from '../support/loopControls.ts';

/** A view of the page: how a person comes to it from the bench, and back. */
export interface View {
  readonly name: string;
  /** Opened by what the presenter size has no room for. */
  readonly atDesk?: true;
  enter(page: Page): Promise<unknown>;
  leave(page: Page): Promise<unknown>;
}

const dialog = (page: Page, name: string | RegExp) => page.getByRole('dialog', { name }).waitFor();

/** What opens by a key, and closes by Escape. */
const byKey = (name: string, key: string, title: string | RegExp): View => ({
  name,
  enter: (page) => pressFor(page, key, page.getByRole('dialog', { name: title })),
  leave: closeDialog,
});

/** What a menu or the panel opens, and Escape closes. */
const byButton = (name: string, buttons: readonly string[], title: string | RegExp): View => ({
  name,
  atDesk: true,
  async enter(page) {
    for (const label of buttons)
      await page.getByRole('button', { name: label, exact: true }).first().press('Enter');
    await dialog(page, title);
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

/** Takes the place of the bench, or stands beside it. */
const ROOMS: readonly View[] = [
  { name: 'bench', enter: async () => {}, leave: async () => {} },
  {
    name: 'loop',
    enter: openLoop,
    leave: (page) => page.getByText('Motion', { exact: true }).first().click(),
  },
  {
    name: 'gain sheet',
    async enter(page) {
      await pressFor(page, 'e', page.locator('iframe[title="Gain sheet as printed"]'));
    },
    leave: closeDialog,
  },
  {
    name: 'two axes',
    async enter(page) {
      await page.keyboard.press('u');
      await page.getByRole('region', { name: 'Candidate B:' }).waitFor();
    },
    leave: (page) => page.getByRole('button', { name: 'Back to the bench' }).click(),
  },
  {
    name: 'a lesson',
    async enter(page) {
      await pressFor(page, 'o', page.getByRole('dialog', { name: 'Lessons' }));
      await page
        .getByRole('dialog', { name: 'Lessons' })
        .getByRole('button', { name: /^Start / })
        .first()
        .click();
      await page.getByRole('complementary', { name: 'Lesson' }).waitFor();
    },
    async leave(page) {
      await page.getByRole('button', { name: 'End lesson' }).first().click();
      await page.getByRole('complementary', { name: 'Lesson' }).waitFor({ state: 'hidden' });
    },
  },
];

const part = (name: Part): View => ({
  name: `study: ${name}`,
  async enter(page) {
    await pressFor(page, 'w', page.locator('.study-bar'));
    await show(page, name);
  },
  leave: (page) => page.getByRole('button', { name: 'Back to the bench' }).click(),
});

/** Every view of the page. */
export const VIEWS: readonly View[] = [
  ...ROOMS,
  ...DIALOGS,
  ...(['Job', 'Sizing', 'Side by side', 'Heat', 'Accuracy', 'Verdict'] as const).map(part),
];

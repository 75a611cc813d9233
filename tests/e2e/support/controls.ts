import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import type { ParameterName } from '../../../shared/core/parameters/table.ts';
import type { DriveType } from '../../../shared/core/scene.ts';
import { toSI, UNITS, type Unit } from '../../../shared/core/units.ts';
import { parameterLabel } from '../../../src/ui/fields/label.ts';
import { eventually } from './patience.ts';

/** What a person does on the page and reads from it. */

export const press = (page: Page, button: string) =>
  page
    .getByRole('group', { name: 'Run', exact: true })
    .getByRole('button', { name: button, exact: true })
    .click();

export async function expectState(
  page: Page,
  state: 'Paused' | 'Running' | 'Tripped' | RegExp,
): Promise<void> {
  await page.locator('#bar .clock .state', { hasText: state }).waitFor();
}

/** Types a value into a field of the open position-loop group, in the field's own unit. */
export async function type(page: Page, name: ParameterName, text: string): Promise<void> {
  const field = page.locator(`#field-${name}`);
  await field.fill(text);
  await field.press('Enter');
}

export const slider = (page: Page, name: ParameterName) =>
  page.getByRole('slider', { name: `${parameterLabel(name)}, slider`, exact: true });

/** Drags a slider by a share of its length with the mouse, in a few steps as a hand would; the value in force then. */
export async function drag(page: Page, name: ParameterName, share: number): Promise<number> {
  const track = slider(page, name);
  await track.scrollIntoViewIfNeeded();
  const box = present(await track.boundingBox());
  const [low, high, at] = await track.evaluate((input: HTMLInputElement) => [
    input.min,
    input.max,
    input.value,
  ]);
  const from = box.x + (box.width * (Number(at) - Number(low))) / (Number(high) - Number(low));
  const y = box.y + box.height / 2;
  await page.mouse.move(from, y);
  await page.mouse.down();
  await page.mouse.move(from + share * box.width, y, { steps: 8 });
  await page.mouse.up();
  return Number(await page.locator(`#field-${name}`).inputValue());
}

/** Number of the last finished move, from 1; 0 before the first. */
export async function moveNumber(page: Page): Promise<number> {
  return Number(/Move (\d+):/.exec((await page.locator('.figures').textContent()) ?? '')?.[1] ?? 0);
}

/** Simulated time on the clock, s. */
export async function clock(page: Page): Promise<number> {
  return Number.parseFloat((await page.locator('#bar .clock .time').textContent()) ?? '');
}

/** Back to the start of the scene, from a pause or a trip; returns once the page shows it. */
export async function reset(page: Page): Promise<void> {
  await expectState(page, /Paused|Tripped/);
  await press(page, 'Reset');
  await eventually(() => clock(page)).toBe(0);
  await expectState(page, 'Paused');
}

export const choose = (page: Page, what: 'Scene' | 'Drive', title: string) =>
  page.getByRole('combobox', { name: what, exact: true }).selectOption({ label: title });

/** Waits until a move that began after now is finished: the second one from here. */
export async function awaitFullMove(page: Page): Promise<void> {
  const now = await moveNumber(page);
  await eventually(() => moveNumber(page)).toBeGreaterThan(now + 1);
}

/** One move by the button; the figures are those of a whole move. */
export async function makeMove(page: Page): Promise<void> {
  const before = await moveNumber(page);
  await press(page, 'Move');
  await eventually(() => moveNumber(page)).toBe(before + 1);
  await expectState(page, 'Paused');
}

/** Text of a figure of the last move, e.g. `7.76 µm`. */
export async function figureText(page: Page, label: string): Promise<string> {
  return (await page.locator('.figure', { hasText: label }).locator('b').textContent()) ?? '';
}

/** A figure of the last move, SI. */
export async function figure(page: Page, label: string): Promise<number> {
  return readQuantity(await figureText(page, label));
}

/** Force of the hand as the stage shows it beside the hand, N; null while nothing is held. */
export async function handForce(page: Page): Promise<number | null> {
  const shown = page.locator('output.stage-hand');
  return (await shown.isVisible())
    ? readQuantity(((await shown.textContent()) ?? '').replace('Hand', ''))
    : null;
}

/** `7.76 µm` in SI. */
export function readQuantity(text: string): number {
  const [number = '', unit = ''] = text.trim().replace('−', '-').split(/\s+/);
  if (!(unit in UNITS)) throw new Error(`“${text}” has no unit of the table`);
  return toSI(Number(number), unit as Unit);
}

/** Puts a drive of each of these types on the bench, with gains that make its moves. */
export async function putDrives(page: Page, driveTypes: readonly DriveType[]): Promise<void> {
  for (const driveType of driveTypes) {
    const { title } = present(PRESETS[driveType]);
    await choose(page, 'Drive', title);
    await reset(page);
    await makeMove(page);
    expect(await figure(page, 'Following error, peak'), title).toBeGreaterThan(0);
    expect(await page.getByRole('region', { name: 'Trip' }).isVisible(), title).toBe(false);
  }
}

/** Closes what Escape closes; only then do keys mean something to the page again. */
export async function closeDialog(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await eventually(() => page.locator('dialog[open]').count()).toBe(0);
}

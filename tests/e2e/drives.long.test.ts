import { it } from 'vitest';
import { sceneById } from '../../scenes/index.ts';
import { DRIVE_TYPES } from '../../shared/core/scene.ts';
import { choose, expectState, handForce, press, putDrives, reset } from './support/controls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

it('puts a drive of each type on the stage with gains that make its moves', async () => {
  await putDrives(await open(), DRIVE_TYPES);
});

it('lets a hand pull the table by the keys, without the drive and against it', async () => {
  const page = await open();
  const scene = sceneById('free-pull-coreless');
  await choose(page, 'Scene', scene.title);
  await press(page, 'Run');
  await expectState(page, 'Running');
  const pull = async () => Math.abs((await handForce(page)) ?? Number.NaN);

  // Nothing but friction holds the table, so it follows until friction alone balances the spring.
  await page.getByRole('application').focus();
  await page.keyboard.down('Shift');
  await page.keyboard.down('ArrowRight');
  const { sealFriction, sealStiction } = scene.parameters;
  await eventually(pull).toBeLessThan(2 * (sealFriction + sealStiction));
  await page.keyboard.up('ArrowRight');
  await page.keyboard.up('Shift');
  await eventually(() => handForce(page)).toBe(null);

  // The integral part brings the table back to where it was, so the spring keeps the 20 N it was stretched for.
  // The reset puts the table at its start: on its way back there, the spring would be stretched further.
  await page.keyboard.press('d');
  await press(page, 'Pause');
  await reset(page);
  await press(page, 'Run');
  await expectState(page, 'Running');
  await page.getByRole('application').focus();
  await page.keyboard.down('ArrowRight');
  await eventually(pull).toBeCloseTo(20, 0);
  await page.keyboard.up('ArrowRight');
});

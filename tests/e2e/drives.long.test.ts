import { it } from 'vitest';
import { DRIVE_TYPES } from '../../shared/core/scene.ts';
import { putDrives } from './controls.ts';
import { pageTests } from './page.ts';

const { open } = pageTests();

it('puts a drive of each type on the stage with gains that make its moves', async () => {
  await putDrives(await open(), DRIVE_TYPES);
});

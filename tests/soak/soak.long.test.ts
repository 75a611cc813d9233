import { expect, it } from 'vitest';
import { SOAK_SCENES, soakLapse, soakLive } from './model.ts';

/** A cycle of the scan takes 25 s. */
const SCENES = SOAK_SCENES.filter((id) => id !== 'slow-scan-iron');

it.each(SCENES)('%s runs for twenty seconds without growth, drift or a residual', (id) => {
  expect(soakLive(id, 20).failures).toEqual([]);
});

it('a day of duty leaves nothing behind, and is the same when it is repeated', () => {
  expect(soakLapse('mould-shuttle', 24).failures).toEqual([]);
});

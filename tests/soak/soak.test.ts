import { expect, it } from 'vitest';
import { soakLapse, soakLive } from './model.ts';

it('a scene that runs for a while leaves nothing behind and does not drift', () => {
  const { failures, cycles } = soakLive('mould-shuttle', 4);
  expect(failures).toEqual([]);
  expect(cycles).toBeGreaterThan(2);
});

it('an hour of duty leaves nothing behind', () => {
  expect(soakLapse('mould-shuttle', 1).failures).toEqual([]);
});

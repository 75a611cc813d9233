import { expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { chipBed } from '../../../shared/axis/chips/chipBed.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { chipText } from '../../../src/stage/chipText.ts';
import { heldText } from '../../../src/tuning/chipNote.ts';

const parameters = (id: string, changes: ParameterChanges) => ({ ...sceneById(id).parameters, ...changes });
const said = (id: string, changes: ParameterChanges, to = 0, force = 0) => {
  const p = parameters(id, changes);
  return chipText(p, chipBed(p), { poured: 0, from: 0, to, force }, 4);
};

it('counts every chip once, wherever it is', () => {
  for (const to of [0, 0.05, 0.2]) {
    const [total, ...parts] = (said('slow-scan-iron', { chipCount: 90 }, to).match(/\d+(?= \w)/g) ?? []).map(
      Number,
    );
    expect(total).toBe(90);
    // The last number is how much larger they are drawn.
    expect(parts.slice(0, -1).reduce((sum, each) => sum + each, 0)).toBe(90);
  }
});

it('says what brakes, and that a cover or a screw leaves nothing to brake', () => {
  expect(said('slow-scan-iron', { chipCount: 90 }, 0.05, 12.4)).toContain('They brake by 12 N now.');
  expect(said('slow-scan-iron', { chipCount: 90 })).toContain('They do not brake now.');
  expect(said('slow-scan-iron', { chipCount: 90, cover: true })).toBe(
    'The cover keeps 90 chips off the magnets.',
  );
  expect(said('screw-backlash', { chipCount: 90 })).toBe('No open magnets: no chip is attracted.');
  expect(said('slow-scan-iron', { chipCount: 0 })).toBe('');
});

it('tells how hard a chip is held in newtons and weights', () => {
  expect(heldText(parameters('slow-scan-iron', {}))).toMatch(/held by [\d.]+ m?N, \d+ times its weight/);
  expect(heldText(parameters('screw-backlash', {}))).toContain('No open magnets here');
});

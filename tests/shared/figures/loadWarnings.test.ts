import { expect, it } from 'vitest';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { loadWarnings } from '../../../shared/figures/loadWarnings.ts';

const p = {
  ...defaultParameters(),
  continuousCurrent: 5.66,
  peakCurrent: 17,
  continuousForce: 200,
  motorCount: 1,
};

it('a run within the limits of amplifier and motor is not remarked on', () => {
  expect(loadWarnings(p, { rmsCurrent: 5.6, peakCurrent: 16.9, rmsForce: 199 })).toEqual([]);
});

it('a current that the amplifier cannot keep up is named with its limit and what to do', () => {
  const [warning, ...others] = loadWarnings(p, { rmsCurrent: 6.51, peakCurrent: 12, rmsForce: 150 });
  expect(others).toEqual([]);
  expect(warning).toMatch(
    /6\.51 A peak, is above the continuous current of the amplifier, 5\.66 A peak\..*Lower acceleration/,
  );
});

it('so are a force that heats the motor too much, and a current at its limit', () => {
  const warnings = loadWarnings(p, { rmsCurrent: 5, peakCurrent: 17, rmsForce: 210 });
  expect(warnings).toHaveLength(2);
  expect(warnings[0]).toContain('210 N, is above the continuous force of the motor, 200 N');
  expect(warnings[1]).toMatch(/reaches its limit, 17(\.0)? A/);
});

it('several motors share the force', () => {
  const four = { ...p, motorCount: 4 };
  expect(loadWarnings(four, { rmsCurrent: 5, peakCurrent: 10, rmsForce: 700 })).toEqual([]);
});

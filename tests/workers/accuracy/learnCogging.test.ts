import { expect, it } from 'vitest';
import { dryMotorDrag, viscousDrag } from '../../../shared/axis/drag.ts';
import { slidingFriction } from '../../../shared/axis/guide.ts';
import { coggingTerms } from '../../../shared/axis/periodic.ts';
import { changedSinceLearned } from '../../../shared/core/coggingTable.ts';
import { rms, shelfScene } from '../../scenes/runs.ts';
import { learn } from './learnedTable.ts';

const iron = shelfScene('slow-scan-iron');
const learned = learn(iron);

it('finds the cogging of the motor to a few per cent, although friction is in every current', () => {
  const terms = coggingTerms(iron.parameters);
  const { table } = learned;
  const truth = table.forces.map((_, k) =>
    terms.reduce(
      (sum, { amplitude, period, phase }) =>
        sum + amplitude * Math.sin((2 * Math.PI * (table.from + k * table.spacing)) / period + phase),
      0,
    ),
  );
  const off = table.forces.map((force, k) => force - truth[k]!);
  expect(rms(off) / rms(truth)).toBeLessThan(0.03);
  expect(learned.nothingToGain).toBe(false);
  // Half the difference of the directions is dry friction with a little viscous drag.
  const dry = slidingFriction(iron.parameters) + dryMotorDrag(iron.parameters);
  expect(learned.friction).toBeGreaterThan(dry);
  expect(learned.friction - viscousDrag(iron.parameters) * learned.table.scanSpeed).toBeCloseTo(dry, 0);
});

it('tells what of the machine is no longer what it was', () => {
  expect(changedSinceLearned(learned.table, iron.parameters)).toEqual([]);
  const { parameters } = shelfScene('slow-scan-iron', { cogging1: 12, payload: 6 });
  expect(changedSinceLearned(learned.table, parameters)).toEqual(['cogging1']);
});

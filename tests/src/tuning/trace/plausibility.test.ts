import { expect, it } from 'vitest';
import { defaultParameters } from '../../../../shared/core/parameters/table.ts';
import type { Estimate } from '../../../../shared/protocol/fit.ts';
import { implausible } from '../../../../src/tuning/trace/plausibility.ts';
import { suggestMapping } from '../../../../src/tuning/trace/traceFile.ts';
import { readTraceTable } from '../../../../src/tuning/trace/traceTable.ts';

const table = readTraceTable('Zeit [ms];Pos [mm];Iq [A]\n0;1;2\n1;2;3\n2;3;4');
if ('problems' in table) throw new Error('unreadable');
const mapping = suggestMapping(table);
const p = defaultParameters();
const around = (value: number): Estimate => ({
  value,
  low: 0.98 * value,
  high: 1.02 * value,
  scatter: 0,
  tolerance: 0,
});
const said = (mass: number, coulomb: number, current: number) =>
  implausible(
    { estimates: { mass: around(mass), coulomb: around(coulomb) } },
    { current: Float64Array.of(0, -current, 1), currentCommand: null },
    p,
    table,
    mapping,
  );

it('an axis like that on the bench is not remarked on', () => {
  expect(said(14.2, 6, 20)).toEqual([]);
});

it('a mass below that of the motor names the columns whose units are in doubt', () => {
  // Micrometres read as millimetres: a thousandth of the mass.
  const [problem, ...others] = said(0.0142, 6, 20);
  expect(others).toEqual([]);
  expect(problem).toMatch(
    /fitted mass, 14\.2 g, is below that of the motor alone, 1\.20 kg.*column 2, “Pos \[mm\]”, read in mm/,
  );
});

it('so do a current beyond the drive and a friction of kilonewtons', () => {
  // Milliamperes read as amperes.
  const problems = said(14200, 6000, 20000);
  expect(problems).toHaveLength(2);
  expect(problems[0]).toMatch(/reaches 20000 A peak.*column 3, “Iq \[A\]”, read in A/);
  expect(problems[1]).toMatch(/sliding friction, 6\.00 kN, is more than half/);
});

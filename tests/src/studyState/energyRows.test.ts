import { expect, test } from 'vitest';
import type { EnergyFlow } from '../../../shared/protocol/accuracy.ts';
import { energyRows, yearRows } from '../../../src/studyState/tables/energyRows.ts';
import type { TableRow } from '../../../src/studyState/tables/table.ts';
import { recordedDrives, recordedJob } from '../../shared/study/recordedStudy.ts';
import { withDay } from '../../shared/verdict/candidates.ts';

const flow: EnergyFlow = {
  cycleTime: 2,
  drawn: 30,
  returned: 6,
  copper: 20,
  iron: 0,
  guide: 4,
  nut: 0,
  other: 0,
  work: 0,
  stored: 0,
};

const text = (rows: readonly TableRow[], id: string) =>
  rows.find((row) => row.id === id)?.cells.map((cell) => cell.text);

test('net energy and power of a cycle follow from what is drawn and returned', () => {
  const rows = energyRows([flow]);
  expect(text(rows, 'energy-net')).toEqual(['24.0 J']);
  expect(text(rows, 'energy-netPower')).toEqual(['12.0 W']);
});

test('energy and money of a year follow from the mean power of the day', () => {
  const steady = withDay(recordedDrives().A, (sample) => ({ ...sample, electricPower: 100 }));
  // 0.25 a kWh; 1 kWh = 3.6 MJ.
  const job = recordedJob({ dailyTime: 8 * 3600, days: 250, energyPrice: 0.25 / 3.6e6 });
  const rows = yearRows([steady], job);
  expect(text(rows, 'year-power')).toEqual(['100 W']);
  // 0.1 kW · 8 h · 250 = 200 kWh, for 50.
  expect(text(rows, 'year-energy')).toEqual(['200 kWh']);
  expect(text(rows, 'year-cost')).toEqual(['50.0']);
});

test('a loss that no drive has is left out, and a drive that trips has no energy of a cycle', () => {
  const rows = energyRows([flow, null]);
  expect(rows.map(({ id }) => id)).not.toContain('energy-iron');
  expect(text(rows, 'energy-drawn')).toEqual(['30.0 J', 'trips']);
});

import { expect, test } from 'vitest';
import type { EnergyFlow } from '../../../shared/protocol/accuracy.ts';
import { energyRows } from '../../../src/studyState/energyRows.ts';
import { sampleCandidates, sampleJob } from '../../shared/study/sampleOutcome.ts';

/** Power all day long as in the sample, but always the same. */
function candidateWith(power: number) {
  const [candidate] = sampleCandidates();
  const { heat } = candidate!.outcome;
  const samples = heat.asSet.samples.map((sample) => ({ ...sample, electricPower: power }));
  return {
    ...candidate!,
    outcome: { ...candidate!.outcome, heat: { ...heat, asSet: { ...heat.asSet, samples } } },
  };
}

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

test('energy, power and money of a year follow from those of a cycle and of a day', () => {
  // 0.25 a kWh; 1 kWh = 3.6 MJ.
  const { values } = sampleJob({ dailyTime: 8 * 3600, days: 250, energyPrice: 0.25 / 3.6e6 });
  const rows = energyRows([candidateWith(100)], [flow], values);
  const text = (id: string) => rows.find((row) => row.id === `energy-${id}`)!.cells[0]!.text;
  expect(text('net')).toBe('24.0 J');
  expect(text('power')).toBe('12.0 W');
  // 0.1 kW · 8 h · 250 = 200 kWh, for 50.
  expect(text('year')).toBe('200 kWh');
  expect(text('cost')).toBe('50.0');
});

test('a drive that stops itself has no energy of a cycle', () => {
  const rows = energyRows([candidateWith(100)], [null], sampleJob().values);
  expect(rows.find(({ id }) => id === 'energy-drawn')!.cells[0]!.text).toBe('—');
});

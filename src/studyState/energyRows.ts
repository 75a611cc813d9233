import { inUnit, ranged } from '../../shared/core/format.ts';
import { durationText } from '../../shared/figures/timeLapseText.ts';
import type { EnergyFlow } from '../../shared/protocol/accuracy.ts';
import type { JobValues } from '../../shared/study/job.ts';
import { dayPower, yearEnergy } from '../../shared/verdict/read.ts';
import type { CandidateTableRow } from './candidateTableRow.ts';
import type { SimulatedCandidate } from './simulatedCandidate.ts';

/** Energy of a cycle, power over the day, and what a year of it costs. `flows` holds null where the drive stopped itself. */
export function energyRows(
  candidates: readonly SimulatedCandidate[],
  flows: readonly (EnergyFlow | null)[],
  job: JobValues,
): CandidateTableRow[] {
  const { dailyTime, days, energyPrice } = job;
  const ofFlow = (text: (flow: EnergyFlow) => string) =>
    flows.map((flow) => ({ text: flow ? text(flow) : '—' }));
  const ofDay = (of: (candidate: SimulatedCandidate) => number | null, text: (value: number) => string) =>
    candidates.map(of).map((value) => ({ text: value === null ? 'does not last the day' : text(value) }));
  const ofYear = (text: (energy: number) => string) => ofDay((candidate) => yearEnergy(candidate, job), text);
  return [
    {
      id: 'energy-drawn',
      label: 'Drawn in a cycle',
      definition:
        'Taken at the motor terminals while energy flows into the motor. Losses of the amplifier are not in it.',
      cells: ofFlow(({ drawn }) => ranged(drawn, 'J')),
    },
    {
      id: 'energy-returned',
      label: 'Given back in a cycle',
      definition: 'By braking. It is saved only where something else on the bus takes it, or stores it.',
      cells: ofFlow(({ returned }) => ranged(returned, 'J')),
    },
    {
      id: 'energy-net',
      label: 'Used in a cycle',
      definition: 'What is drawn less what is given back, everything as warm as at the end of the day.',
      cells: ofFlow(({ drawn, returned }) => ranged(drawn - returned, 'J')),
    },
    {
      id: 'energy-power',
      label: 'Power, mean of a cycle',
      definition: 'The energy used in a cycle over the time of a cycle.',
      cells: ofFlow(({ drawn, returned, cycleTime }) => ranged((drawn - returned) / cycleTime, 'W')),
    },
    {
      id: 'energy-day',
      label: 'Power, mean of a day',
      definition: 'With windings as warm as they get over the day, whose resistance is then higher.',
      cells: ofDay(dayPower, (power) => ranged(power, 'W')),
    },
    {
      id: 'energy-year',
      label: 'Energy of a year',
      definition: `Mean power of the day over ${durationText(dailyTime)} on each of ${days} days.`,
      cells: ofYear((energy) => inUnit(energy, 'kWh')),
    },
    {
      id: 'energy-cost',
      label: 'Cost of a year',
      definition: `That energy at ${inUnit(energyPrice, '1/kWh')}, in your currency.`,
      cells: ofYear((energy) => inUnit(energy * energyPrice, '')),
    },
  ];
}

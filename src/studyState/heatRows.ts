import { inUnit, ranged } from '../../shared/core/format.ts';
import { type UnitSystem, unitIn } from '../../shared/core/units.ts';
import { durationText } from '../../shared/figures/timeLapseText.ts';
import { tripText } from '../../shared/figures/tripText.ts';
import type { Course, HeatState } from '../../shared/protocol/timeLapse.ts';
import type { JobValues } from '../../shared/study/job.ts';
import type { CandidateTableRow } from './candidateTableRow.ts';
import type { SimulatedCandidate } from './simulatedCandidate.ts';

interface HeatRow {
  readonly id: string;
  readonly label: string;
  readonly definition: string;
  readonly text: (state: HeatState, units: UnitSystem) => string;
  /** Whether it is more than the job allows. */
  readonly fails?: (state: HeatState, job: JobValues) => boolean;
  /** A screw has it, nothing else. */
  readonly ofScrew?: boolean;
}

const degrees = (value: number, units: UnitSystem) => inUnit(value, unitIn(units, '°C'));

const ROWS: readonly HeatRow[] = [
  {
    id: 'winding',
    label: 'Winding',
    definition: 'Hottest winding of the cycle that is run at this time.',
    text: ({ windingPeak }, units) => degrees(windingPeak, units),
  },
  {
    id: 'carrier',
    label: 'Coil carrier or motor housing',
    definition: 'What holds the winding, and gives its heat to air, coolant and table.',
    text: ({ carrier }, units) => degrees(carrier, units),
  },
  {
    id: 'table',
    label: 'Table',
    definition: 'It is warmed by the carrier and the guide.',
    text: ({ table }, units) => degrees(table, units),
  },
  {
    id: 'screw',
    label: 'Screw',
    definition: 'It is warmed by nut and bearings, which no coolant at the motor reaches.',
    text: ({ screw }, units) => degrees(screw, units),
    ofScrew: true,
  },
  {
    id: 'growth',
    label: 'Growth at the tool',
    definition:
      'How far the tool stands from where it stood cold at the same setpoint, at the end of the stroke where that is more. A scale on the table sees the growth of what it is fixed to; an encoder on the motor does not see that of the screw.',
    text: ({ growth }, units) => ranged(growth, unitIn(units, 'µm')),
    fails: ({ growth }, { growthLimit }) => Math.abs(growth) > growthLimit,
  },
  {
    id: 'drift',
    label: 'Force per ampere, change',
    definition:
      'Against that with everything as cold as the room. Warm magnets have less flux, so that the same force takes more current.',
    text: ({ forcePerAmp }) => inUnit(forcePerAmp - 1, '%', 2),
  },
  {
    id: 'power',
    label: 'Electric power, mean',
    definition: 'Taken at the motor terminals less what is given back, over the cycle.',
    text: ({ electricPower }) => ranged(electricPower, 'W'),
  },
  {
    id: 'copper',
    label: 'of it lost in copper',
    definition: 'Heat of the windings. Warm copper has more resistance: 0.39 % per kelvin.',
    text: ({ copper }) => ranged(copper, 'W'),
  },
];

/** The state of all candidates at one moment, with what the job allows beside it. */
export function stateRows(
  kind: string,
  candidates: readonly SimulatedCandidate[],
  states: readonly (HeatState | null)[],
  /** Said where a candidate has no state. */
  absent: (place: number) => string,
  job: JobValues,
  units: UnitSystem,
): CandidateTableRow[] {
  const anyScrew = candidates.some(hasScrew);
  return ROWS.filter(({ ofScrew = false }) => anyScrew || !ofScrew).map(
    ({ id, label, definition, text, fails, ofScrew = false }) => ({
      id: `heat-${kind}-${id}`,
      label,
      definition,
      cells: states.map((state, k) => {
        if (ofScrew && !hasScrew(candidates[k]!)) return { text: '—' };
        if (state === null) return { text: absent(k) };
        return { text: text(state, units), fails: fails?.(state, job) ?? false };
      }),
    }),
  );
}

function hasScrew({ scene }: SimulatedCandidate): boolean {
  return scene.parameters.lead > 0;
}

/** When something gives out in the hours of the duty. */
export function eventRows(courses: readonly Course[], units: UnitSystem): CandidateTableRow[] {
  const when = (time: number | null) =>
    time === null ? { text: 'never' } : { text: `after ${durationText(time)}`, fails: true };
  return [
    {
      id: 'heat-hot',
      label: 'Winding folded back',
      definition:
        'The first time that the winding is so hot that the drive lowers its current to protect it. From there on it no longer does the full duty.',
      cells: courses.map(({ hotTime }) => when(hotTime)),
    },
    {
      id: 'heat-overload',
      label: 'Overload allowance used up',
      definition:
        'The first time that the amplifier has given more than its continuous current for longer than it may, and lowers it.',
      cells: courses.map(({ overloadTime }) => when(overloadTime)),
    },
    {
      id: 'heat-trip',
      label: 'Drive stops itself',
      definition: 'A trip ends the day: the winding at its limit, or any other reason that the drive has.',
      cells: courses.map(({ trip }) =>
        trip
          ? { text: `after ${durationText(trip.time)}: ${tripText(trip, units)}`, fails: true }
          : { text: 'never' },
      ),
    },
  ];
}

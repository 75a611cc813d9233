import { at } from '../../shared/core/at.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { magnitude } from '../math/complex.ts';
import type { PlantResponse, PlantState } from './plantResponse.ts';
import type { Shape } from './shape.ts';

/** One number of the search, on a logarithmic scale. */
export interface Coordinate {
  readonly start: number;
  readonly min: number;
  readonly max: number;
}

/** A resonance, Hz, and whether it is that of the sliding or the standing table. */
interface Resonance {
  readonly frequency: number;
  readonly table: 'sliding' | 'standing';
}

/** What a loop consists of; its values are found by a search. */
export interface Structure {
  readonly name: string;
  /** Resonances at which the notches start. */
  readonly notches: readonly Resonance[];
  readonly lowpass: boolean;
  /** Low corners and a long speed filter: less noise instead of more integral gain. */
  readonly quiet: boolean;
  /** The drive has a disturbance observer. */
  readonly observer: boolean;
}

/** A resonance below this, Hz, belongs to the base or a magnet and lies within the loop. */
const LOWEST_NOTCH = 25;
/** Resonances closer than this ratio count as one. */
const SAME = 1.05;

/** The structures worth trying on a machine, simplest first. */
export function structuresFor(plant: PlantResponse, { observer }: Pick<Parameters, 'observer'>): Structure[] {
  const plain = { notches: [], lowpass: false, quiet: false, observer };
  const structures: Structure[] = [
    { ...plain, name: 'no filter' },
    { ...plain, name: 'quiet', quiet: true },
    { ...plain, name: 'low-pass', lowpass: true },
  ];
  const found = (['sliding', 'standing'] as const).flatMap((table) => {
    const frequency = sharpest(plant, plant[table]);
    return frequency === null ? [] : [{ frequency, table }];
  });
  const [first, second] = found;
  if (first) structures.push({ ...plain, name: 'one notch', notches: [first] });
  if (first && second && Math.abs(Math.log(first.frequency / second.frequency)) > Math.log(SAME))
    structures.push({ ...plain, name: 'two notches', notches: [first, second] });
  return structures;
}

/**
 * The resonance that stands highest above the axis as a rigid mass, whose response falls with ω².
 */
function sharpest({ omega }: PlantResponse, { response, modes }: PlantState): number | null {
  let found: number | null = null;
  let highest = 0;
  for (const { frequency } of modes) {
    if (frequency < LOWEST_NOTCH) continue;
    const k = omega.findIndex((w) => w >= 2 * Math.PI * frequency);
    if (k < 0) continue;
    const height = magnitude(response.at(k)) * at(omega, k) ** 2;
    if (height > highest) {
      highest = height;
      found = frequency;
    }
  }
  return found;
}

/**
 * Lead as a share of the crossover, integrator as a share of the lead, speed filter in
 * position-loop samples.
 */
const PID: readonly [lead: Coordinate, integrator: Coordinate, speedFilter: Coordinate] = [
  { start: 0.4, min: 0.1, max: 0.8 },
  { start: 0.4, min: 0.1, max: 1 },
  { start: 0.5, min: 0.25, max: 20 },
];
const QUIET_PID: typeof PID = [
  { start: 0.2, min: 0.1, max: 0.25 },
  { start: 0.35, min: 0.1, max: 0.4 },
  { start: 6, min: 5, max: 20 },
];
const NOTCH_WIDTH: Coordinate = { start: 0.4, min: 0.05, max: 1.5 };
const NOTCH_DEPTH: Coordinate = { start: 0.2, min: 0.01, max: 0.9 };
const LOWPASS_DAMPING: Coordinate = { start: 0.7, min: 0.3, max: 1 };
/** Largest factor by which a notch moves from its resonance. */
const NOTCH_REACH = 1.6;
/** Frequencies of notch and low-pass as shares of the rate. */
const HIGHEST_FILTER = 0.45;
/** Bandwidth of the observer as a share of the rate. */
const OBSERVER: Coordinate = { start: 0.004, min: 2e-4, max: 0.05 };
const LOWPASS: Coordinate = { start: 0.2, min: 0.02, max: HIGHEST_FILTER };

/** @param rate of the position loop, Hz */
export function coordinates(structure: Structure, rate: number): Coordinate[] {
  const times = ({ start, min, max }: Coordinate, factor: number): Coordinate => ({
    start: start * factor,
    min: min * factor,
    max: max * factor,
  });
  const highest = HIGHEST_FILTER * rate;
  const [lead, integrator, speedFilter] = structure.quiet ? QUIET_PID : PID;
  return [
    lead,
    // An observer integrates: a second integral would only cost phase.
    ...(structure.observer ? [] : [integrator]),
    times(speedFilter, 1 / rate),
    ...structure.notches.flatMap((resonance) => {
      const frequency = Math.min(resonance.frequency, highest);
      return [
        {
          start: frequency,
          min: frequency / NOTCH_REACH,
          max: Math.min(frequency * NOTCH_REACH, highest),
        },
        NOTCH_WIDTH,
        NOTCH_DEPTH,
      ];
    }),
    ...(structure.lowpass ? [times(LOWPASS, rate), LOWPASS_DAMPING] : []),
    ...(structure.observer ? [times(OBSERVER, rate)] : []),
  ];
}

/** The shape that values of the coordinates stand for, in the order of `coordinates`. */
export function shapeOf(structure: Structure, values: readonly number[]): Shape {
  let taken = 0;
  const next = () => at(values, taken++);
  const leadCorner = next();
  return {
    leadCorner,
    integratorCorner: structure.observer ? 0 : next() * leadCorner,
    derivativeTime: next(),
    notches: structure.notches.map(() => ({ frequency: next(), width: next(), depth: next() })),
    lowpass: structure.lowpass ? { frequency: next(), damping: next() } : null,
    observerBandwidth: structure.observer ? next() : null,
  };
}

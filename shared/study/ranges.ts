import { GUIDE_FRICTION } from '../axis/guide.ts';
import { type NumberName, within } from '../axis/loop/tunedValue.ts';
import { checkNumber } from '../core/check.ts';
import { MODE_NUMBERS } from '../core/movedMass.ts';
import { linear, type NumberRow } from '../core/parameters/row.ts';
import type { ParameterChanges, Parameters } from '../core/parameters/table.ts';
import {
  entryProblem,
  type Failure,
  failure,
  isRecord,
  type Problem,
  shown,
  unknownName,
} from '../core/problem.ts';
import type { JobValues } from './job.ts';

/** An input that is never known exactly. `factor` is what it turns out to be over what was stated, 1 as stated. */
interface UncertainInput {
  readonly label: string;
  /** Share to either side that is usual; common practice, no source. */
  readonly usual: number;
  /** Each drive has its own; otherwise it is the same for all. */
  readonly ofDrive: boolean;
  readonly job?: (values: JobValues, factor: number) => Partial<JobValues>;
  /** What the axis then is. */
  readonly axis?: (p: Parameters, factor: number) => ParameterChanges;
  /** The same for the simulation, where its controller goes by the datasheet and the calculation does not. */
  readonly simulated?: (p: Parameters, factor: number) => ParameterChanges;
  /** It is what a drive costs. */
  readonly isPrice?: true;
}

const FRICTION = [...GUIDE_FRICTION, 'viscous', 'nutDrag', 'nutViscous'] as const;
const FREQUENCIES = ['baseFrequency', ...MODE_NUMBERS.map((n) => `mode${n}Frequency` as const)] as const;

const UNCERTAIN = {
  payload: {
    label: 'Payload',
    usual: 0.05,
    ofDrive: false,
    job: ({ payload }, factor) => ({ payload: factor * payload }),
    axis: (p, factor) => scaled(p, ['payload'], factor),
  },
  friction: {
    label: 'Friction',
    usual: 0.3,
    ofDrive: true,
    axis: (p, factor) => scaled(p, FRICTION, factor),
  },
  forceConstant: {
    label: 'Force constant',
    usual: 0.05,
    ofDrive: true,
    axis: (p, factor) => scaled(p, ['forceConstant', 'torqueConstant'], factor),
    simulated: (p, factor) => ({
      fluxDeviation: within('fluxDeviation', (1 + p.fluxDeviation) * factor - 1),
    }),
  },
  stiffness: {
    label: 'Stiffness',
    usual: 0.2,
    ofDrive: true,
    axis: (p, factor) => ({
      ...scaled(p, ['linkStiffness', 'screwRigidity'], factor),
      ...scaled(p, FREQUENCIES, Math.sqrt(factor)),
    }),
  },
  price: { label: 'Price of a drive', usual: 0.1, ofDrive: true, isPrice: true },
  energyPrice: {
    label: 'Price of energy',
    usual: 0.2,
    ofDrive: false,
    job: ({ energyPrice }, factor) => ({ energyPrice: factor * energyPrice }),
  },
} as const satisfies Record<string, UncertainInput>;

export type UncertainName = keyof typeof UNCERTAIN;

export const UNCERTAIN_NAMES = Object.keys(UNCERTAIN) as UncertainName[];

export function uncertain(name: UncertainName): UncertainInput {
  return UNCERTAIN[name];
}

/** How far each input lies to either side of what was stated, as a share; evenly between. */
export type Ranges = Readonly<Record<UncertainName, number>>;

export const USUAL_RANGES = Object.fromEntries(
  UNCERTAIN_NAMES.map((name) => [name, UNCERTAIN[name].usual]),
) as Ranges;

/** Those of a study: the usual ones where it states none. */
export function rangesOf({ ranges = USUAL_RANGES }: { readonly ranges?: Ranges }): Ranges {
  return ranges;
}

/** The ranges that a study states, or what is wrong with them; a range that is not stated is the usual one. */
export function checkRanges(input: unknown): { readonly ranges: Ranges } | Failure {
  if (!isRecord(input)) return failure('ranges', input, `The ranges must be an object, not ${shown(input)}.`);
  const stray = Object.keys(input).find((name) => !Object.hasOwn(UNCERTAIN, name));
  if (stray !== undefined)
    return { problems: [unknownName('an input with a range', stray, UNCERTAIN_NAMES, input[stray])] };
  const problems: Problem[] = [];
  const ranges = UNCERTAIN_NAMES.map((name) => {
    const value = input[name];
    if (value === undefined) return [name, UNCERTAIN[name].usual];
    const checked = checkNumber(value, RANGE_ROW);
    if ('legal' in checked) return [name, checked.legal];
    problems.push(entryProblem(`ranges.${name}`, value, checked.wrong, UNCERTAIN[name].label));
    return [name, value];
  });
  return problems.length > 0 ? { problems } : { ranges: Object.fromEntries(ranges) as Ranges };
}

/** How each range is entered. */
export const RANGE_ROW: NumberRow = linear('', '%', [0, 0.5], 0, 'To either side of what was stated');

function scaled(p: Parameters, names: readonly NumberName[], factor: number): ParameterChanges {
  return Object.fromEntries(names.map((name) => [name, p[name] === 0 ? 0 : within(name, factor * p[name])]));
}

import { checkParameters } from './check.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type ParameterName,
  type Parameters,
} from './parameters/table.ts';
import { entryFailure, type Failure, isNot, isRecord } from './problem.ts';

/** Force over position that the controller adds against cogging, as it was learned on a machine. SI. */
export interface CoggingTable {
  /** Encoder position of the first force, m. */
  readonly from: number;
  /** Distance from one force to the next, m. */
  readonly spacing: number;
  /** Speed of the scan it was learned from, m/s. */
  readonly scanSpeed: number;
  /** N, each the mean over one spacing. */
  readonly forces: readonly number[];
  /** What the cogging depends on, as it was when the table was learned. */
  readonly machine: ParameterChanges;
}

/** More forces than this no table has: a metre at a quarter of a millimetre. */
export const MAX_TABLE_FORCES = 4000;

/** Largest force and distance of a table that was not damaged: N, m. */
const MAX_FORCE = 1e5;
const MAX_DISTANCE = 100;

/** What the cogging force over encoder position depends on: motor, field, gap, and where the encoder sits. */
export const TABLE_MACHINE = [
  'motorCount',
  'forceConstant',
  'polePitch',
  'lead',
  'torqueConstant',
  'fieldLaw',
  'airGap',
  'coilOffset',
  'nominalGap',
  'magnetHeight',
  'recoilPermeability',
  'cogging1',
  'cogging1Period',
  'cogging1Phase',
  'cogging2',
  'cogging2Period',
  'cogging2Phase',
  'cogging3',
  'cogging3Period',
  'cogging3Phase',
  'encoderSide',
] as const satisfies readonly ParameterName[];

export function tableMachine(p: Parameters): ParameterChanges {
  return Object.fromEntries(TABLE_MACHINE.map((name) => [name, p[name]]));
}

/** Which parameters of the machine are no longer what they were when the table was learned; an older table names fewer of them. */
export function changedSinceLearned({ machine }: CoggingTable, p: Parameters): ParameterName[] {
  const learned = { ...defaultParameters(), ...machine };
  return TABLE_MACHINE.filter((name) => learned[name] !== p[name]);
}

/** Largest force of the table, N. */
export function tablePeak({ forces }: CoggingTable): number {
  return forces.reduce((peak, force) => Math.max(peak, Math.abs(force)), 0);
}

const isNumberUpTo = (value: unknown, limit: number): value is number =>
  typeof value === 'number' && Math.abs(value) <= limit;

/** Checks a table as it stands in a file or a link. */
export function checkCoggingTable(input: unknown): { readonly table: CoggingTable } | Failure {
  const wrong = (field: string, value: unknown, wanted: string) =>
    entryFailure(field, value, `${isNot(value, wanted)} Learn the table again, or remove it.`);
  if (!isRecord(input)) return wrong('coggingTable', input, 'a table of forces');
  const { from, spacing, scanSpeed, forces, machine } = input;
  if (!isNumberUpTo(from, MAX_DISTANCE)) return wrong('coggingTable.from', from, 'a position in m');
  if (!isNumberUpTo(spacing, MAX_DISTANCE) || spacing <= 0)
    return wrong('coggingTable.spacing', spacing, 'a distance in m above 0');
  if (!isNumberUpTo(scanSpeed, MAX_DISTANCE) || scanSpeed <= 0)
    return wrong('coggingTable.scanSpeed', scanSpeed, 'a speed in m/s above 0');
  if (!Array.isArray(forces) || forces.length < 2 || forces.length > MAX_TABLE_FORCES)
    return wrong('coggingTable.forces', forces, `a list of 2 to ${MAX_TABLE_FORCES} forces`);
  const stray = forces.findIndex((force) => !isNumberUpTo(force, MAX_FORCE));
  if (stray >= 0) return wrong(`coggingTable.forces[${stray}]`, forces[stray], 'a force in N');
  const checked = checkParameters(machine, defaultParameters());
  const [problem] = checked.problems;
  if (problem) return wrong('coggingTable.machine', machine, 'the machine that the table was learned on');
  return { table: { from, spacing, scanSpeed, forces, machine: checked.changes } };
}

import { compensationRows } from './compensation.ts';
import { amplifierRows, heatRows, loopRows, runRows } from './drive.ts';
import { filterRows } from './filters.ts';
import { encoderRows, flexibleRows, guideRows, limitRows, linkRows, wearRows } from './mechanics.ts';
import { baseRows, chipRows, loadRows, moveRows, processRows } from './motion.ts';
import { magnetRows, motorRows } from './motor.ts';
import type { Row, ValueOf } from './row.ts';
import { shapingRows } from './shaping.ts';

/** The groups in the order a person meets them: the loop first, then the job, then the hardware. */
export const PARAMETER_GROUPS = [
  { id: 'loop', title: 'Position loop', rows: loopRows },
  { id: 'filters', title: 'Filters of the loop', rows: filterRows },
  { id: 'move', title: 'Move', rows: moveRows },
  { id: 'shaping', title: 'Command shaping', rows: shapingRows },
  { id: 'compensation', title: 'Compensation', rows: compensationRows },
  { id: 'load', title: 'Load', rows: loadRows },
  { id: 'process', title: 'Process and hand', rows: processRows },
  { id: 'amplifier', title: 'Amplifier', rows: amplifierRows },
  { id: 'motor', title: 'Motor', rows: motorRows },
  { id: 'magnet', title: 'Iron and gap', rows: magnetRows },
  { id: 'link', title: 'Motor to table', rows: linkRows },
  { id: 'flexible', title: 'Further resonances', rows: flexibleRows },
  { id: 'guide', title: 'Guide', rows: guideRows },
  { id: 'wear', title: 'Years of use', rows: wearRows },
  { id: 'chips', title: 'Chips', rows: chipRows },
  { id: 'encoder', title: 'Encoder', rows: encoderRows },
  { id: 'heat', title: 'Heat', rows: heatRows },
  { id: 'base', title: 'Machine base', rows: baseRows },
  { id: 'limits', title: 'Limits and window', rows: limitRows },
  { id: 'run', title: 'Run', rows: runRows },
] as const;

/** The one table of parameters. The panel, the file check, the link, the report and the documents read it. */
export const PARAMETERS = {
  ...loopRows,
  ...filterRows,
  ...moveRows,
  ...shapingRows,
  ...compensationRows,
  ...loadRows,
  ...processRows,
  ...amplifierRows,
  ...motorRows,
  ...magnetRows,
  ...linkRows,
  ...flexibleRows,
  ...guideRows,
  ...wearRows,
  ...chipRows,
  ...encoderRows,
  ...heatRows,
  ...baseRows,
  ...limitRows,
  ...runRows,
};

export type ParameterName = keyof typeof PARAMETERS;

/** A complete, checked set of parameter values, SI. */
export type Parameters = { [K in ParameterName]: ValueOf<(typeof PARAMETERS)[K]> };

export type ParameterChanges = Partial<Parameters>;

export const PARAMETER_NAMES = Object.keys(PARAMETERS) as ParameterName[];

export function isParameterName(name: string): name is ParameterName {
  return Object.hasOwn(PARAMETERS, name);
}

export function parameterRow(name: ParameterName): Row {
  return PARAMETERS[name];
}

/** Every parameter at its default. */
export function defaultParameters(): Parameters {
  return Object.fromEntries(PARAMETER_NAMES.map((name) => [name, parameterRow(name).default])) as Parameters;
}

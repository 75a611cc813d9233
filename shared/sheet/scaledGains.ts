import { compensatesFriction } from '../axis/frictionCompensation.ts';
import { isInStructure } from '../axis/loop/loopGains.ts';
import { compensationRows } from '../core/parameters/compensation.ts';
import { parameterLabel } from '../core/parameters/labels.ts';
import { PARAMETERS, type Parameters } from '../core/parameters/table.ts';
import type { Basis } from './basis.ts';
import { converted, type Factor, factor, MILLISECOND, PERCENT } from './factor.ts';
import { convertedRow, type SheetRow } from './row.ts';

/** One gain for one unit of its input, in every unit of the output. */
export interface ScaledGain {
  readonly parameter: GainName;
  readonly label: string;
  readonly symbol: string;
  /** The unit of its input, such as 'count·ms'; empty for a force without an input. */
  readonly per: string;
  /** In the order of OUTPUTS. */
  readonly forms: readonly SheetRow[];
}

type GainName =
  | 'Kp'
  | 'Ki'
  | 'Kd'
  | 'velocityGain'
  | 'speedFeedforward'
  | 'accelerationFeedforward'
  | 'forceBias'
  | 'coulombCompensation'
  | 'breakawayCompensation';

/** A measure of an input; SI measure = `times` / `by`. */
interface Measure {
  readonly unit: string;
  readonly times: readonly Factor[];
  readonly by: readonly Factor[];
}

/** The units in which a drive may express force at the output of its loop. */
export const OUTPUTS = ['N', 'A peak', 'A RMS', '% of i_pk', '% of F_c'] as const;
type Output = (typeof OUTPUTS)[number];

/** Every gain of the position loop, also for drives that count positions and take times in milliseconds or samples. */
export function scaledGains(p: Parameters, basis: Basis): ScaledGain[] {
  const { count: q, positionPeriod: T } = basis;
  const si = (unit: string): Measure => ({ unit, times: [], by: [] });
  const counts = (unit: string, times: readonly Factor[], by: readonly Factor[]): Measure[] =>
    q === null ? [] : [{ unit, times: [q, ...times], by }];
  const speeds = [
    si('(m/s)'),
    ...counts('(count/ms)', [], [MILLISECOND]),
    ...counts('(count/sample)', [], [T]),
  ];
  const inputs: Readonly<Record<GainName, readonly Measure[]>> = {
    Kp: [si('m'), ...counts('count', [], [])],
    Ki: [si('(m·s)'), ...counts('(count·ms)', [MILLISECOND], []), ...counts('(count·sample)', [T], [])],
    Kd: speeds,
    velocityGain: speeds,
    speedFeedforward: speeds,
    accelerationFeedforward: [
      si('(m/s²)'),
      ...counts('(count/ms²)', [], [MILLISECOND, MILLISECOND]),
      ...counts('(count/sample²)', [], [T, T]),
    ],
    forceBias: [si('')],
    coulombCompensation: [si('')],
    breakawayCompensation: [si('')],
  };
  const names = (Object.keys(inputs) as GainName[]).filter(
    (name) => isInStructure(name, p) && (compensatesFriction(p) || !(name in compensationRows)),
  );
  return names.flatMap((name) => inputs[name].map((input) => scaledGain(name, p[name], input, basis)));
}

function scaledGain(parameter: GainName, value: number, input: Measure, basis: Basis): ScaledGain {
  const { symbol, unit } = PARAMETERS[parameter];
  const label = parameterLabel(parameter);
  const gain = factor(symbol, value, unit);
  const form = (output: Output): SheetRow => {
    const [times, by] = outputFactors(output, basis);
    const { unit: outputUnit, of } = split(output);
    const per = input.unit === '' ? '' : `/${input.unit}`;
    const name = `${symbol} in ${outputUnit}${per}${of}`;
    const result = converted(
      name,
      [gain, ...input.times, ...times],
      [...input.by, ...by],
      `${outputUnit}${per}`,
    );
    const text = input.unit === '' ? output : `${output} per ${bare(input.unit)}`;
    return convertedRow(`${label}, ${text}`, symbol, result);
  };
  return { parameter, label, symbol, per: bare(input.unit), forms: OUTPUTS.map(form) };
}

/** One unit of output from one newton: what to multiply by, what to divide by. */
function outputFactors(output: Output, basis: Basis): [readonly Factor[], readonly Factor[]] {
  switch (output) {
    case 'N':
      return [[], []];
    case 'A peak':
      return [[], [basis.forcePerAmp]];
    case 'A RMS':
      return [[], [basis.forcePerAmpRms]];
    case '% of i_pk':
      return [[PERCENT], [basis.forcePerAmp, basis.peakCurrent]];
    case '% of F_c':
      return [[PERCENT], [basis.continuousForce]];
  }
}

function split(output: Output): { readonly unit: string; readonly of: string } {
  const [unit = '', of] = output.split(' of ');
  return { unit, of: of === undefined ? '' : ` of ${of}` };
}

function bare(unit: string): string {
  return unit.replace(/^\(|\)$/g, '');
}

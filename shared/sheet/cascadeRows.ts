import { cascadeOf } from '../axis/loop/cascade.ts';
import { at } from '../core/at.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { Basis } from './basis.ts';
import { converted, type Factor, factor, fixedFactor, MILLISECOND, PERCENT } from './factor.ts';
import { convertedRow, type SheetRow, type SheetSection, setRow } from './row.ts';

const TEXT: readonly [string, string] = [
  'For a drive with a speed loop inside a position loop: F = K_vel · (1 + 1/(T_n s)) · (K_v · e + v_set − v̂).',
  'K_d = K_vel,  K_p = K_vel · (K_v + 1/T_n),  K_i = K_vel · K_v/T_n',
];

/** 1/s in (m/min)/mm, as machine tools quote it: 1 (m/min)/mm is 1000/60 per second. */
const METRES_PER_MINUTE_PER_MM = fixedFactor('0.06 s·(m/min)/mm', 0.06);

/** The cascade in the units of drives; of a PID, the same loop as a cascade, or the reason why it has no cascade form. */
export function cascadeSection(p: Parameters, basis: Basis): SheetSection {
  const own = p.controller === 'cascade';
  const section = { id: 'cascade', title: own ? 'Cascade, in the units of drives' : 'Equivalent cascade' };
  const text = own ? [TEXT[0]] : TEXT;
  const cascade = own
    ? {
        positionGain: p.positionLoopGain,
        velocityGain: p.velocityGain,
        resetTime: p.resetTime || Number.POSITIVE_INFINITY,
      }
    : cascadeOf(p);
  if (typeof cascade === 'string') {
    return { ...section, text: [...text, cascade], rows: [setRow('Cascade', '', 'none')] };
  }
  const Kv = factor('K_v', cascade.positionGain, '1/s');
  const Kvel = factor('K_vel', cascade.velocityGain, 'N·s/m');
  const rows = [
    setRow('Position gain', 'K_v', cascade.positionGain, '1/s'),
    row('Position gain', 'K_v in 1/ms', [Kv, MILLISECOND], [], '1/ms'),
    row('Position gain', 'K_v in (m/min)/mm', [Kv, METRES_PER_MINUTE_PER_MM], [], '(m/min)/mm'),
    row('Position gain, per sample', 'K_v · T_p', [Kv, basis.positionPeriod], [], '1/sample'),
    setRow('Velocity gain', 'K_vel', cascade.velocityGain, 'N·s/m'),
    row('Velocity gain', 'K_vel in A peak/(m/s)', [Kvel], [basis.forcePerAmp], 'A peak/(m/s)'),
    row('Velocity gain', 'K_vel in A RMS/(m/s)', [Kvel], [basis.forcePerAmpRms], 'A RMS/(m/s)'),
    row(
      'Velocity gain',
      'K_vel in %/(m/s) of i_pk',
      [Kvel, PERCENT],
      [basis.forcePerAmp, basis.peakCurrent],
      '%/(m/s)',
    ),
    ...countRows(Kvel, basis),
    ...resetRows(cascade.resetTime, Kvel, basis),
  ];
  return { ...section, text, rows };
}

function countRows(Kvel: Factor, { count, forcePerAmp, positionPeriod }: Basis): SheetRow[] {
  if (count === null) return [];
  return [
    row(
      'Velocity gain',
      'K_vel in A peak/(count/ms)',
      [Kvel, count],
      [MILLISECOND, forcePerAmp],
      'A peak/(count/ms)',
    ),
    row(
      'Velocity gain',
      'K_vel in A peak/(count/sample)',
      [Kvel, count],
      [positionPeriod, forcePerAmp],
      'A peak/(count/sample)',
    ),
  ];
}

function resetRows(resetTime: number, Kvel: Factor, { positionPeriod, forcePerAmp }: Basis): SheetRow[] {
  if (!Number.isFinite(resetTime)) {
    return [setRow('Reset time of the speed loop', 'T_n', 'none: no integral action')];
  }
  const Tn = factor('T_n', resetTime, 's');
  return [
    setRow('Reset time of the speed loop', 'T_n', resetTime, 's'),
    row('Reset time, in samples', 'T_n / T_p', [Tn], [positionPeriod], 'samples'),
    row('Integral gain of the speed loop', 'K_vel / T_n', [Kvel], [Tn, forcePerAmp], 'A/m'),
    row('Integral share added per sample', 'T_p / T_n', [positionPeriod], [Tn], ''),
  ];
}

function row(
  label: string,
  name: string,
  over: readonly Factor[],
  under: readonly Factor[],
  unit: string,
): SheetRow {
  return convertedRow(label, at(name.split(' '), 0), converted(name, over, under, unit));
}

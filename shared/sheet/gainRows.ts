import { parameterLabel } from '../core/parameters/labels.ts';
import { type Parameters, parameterRow } from '../core/parameters/table.ts';
import { isTuningName, TUNING_NAMES, type TuningName } from '../core/tuning.ts';
import { siUnit } from '../core/units.ts';
import type { SheetRow, SheetSection } from './row.ts';

/** The control law that the simulation runs: gains of the same name mean other things in other drives. */
const LAW = [
  'Once per position-loop sample T_p, in SI units: e = x_set − x, where x is the encoder reading.',
  'v̂ += T_p/(T_f + T_p) · ((x − x_prev)/T_p − v̂)',
  'I += K_i · T_p · e, held while the current is limited in that direction',
  'F = K_p · e + I + K_d · (v_set − v̂) + K_vff · v_set + K_aff · a_set + F_b',
  'i* = low-pass(notch 2(notch 1(F)))/K_f,pk, limited to ± i_lim',
];

/** Every value that is read back, in SI and unrounded. */
export function gainSection(p: Parameters): SheetSection {
  return {
    id: 'gains',
    title: 'Gains in SI',
    text: LAW,
    rows: TUNING_NAMES.map((name) => gainRow(name, p)),
  };
}

function gainRow(name: TuningName, p: Parameters): SheetRow {
  const row = parameterRow(name);
  const value = p[name];
  return {
    label: parameterLabel(name),
    symbol: row.symbol,
    value: typeof value === 'boolean' ? onOff(value) : value,
    unit: row.kind === 'number' ? siUnit(row.unit) : '',
    how: row.meaning,
    parameter: name,
  };
}

export function onOff(on: boolean): 'on' | 'off' {
  return on ? 'on' : 'off';
}

/** The value of a parameter from what its row shows; anything that is neither a number nor a switch is left for the check to refuse. */
export function parameterValue(name: string, shown: unknown): unknown {
  if (!isTuningName(name) || parameterRow(name).kind !== 'switch') return shown;
  return shown === 'on' ? true : shown === 'off' ? false : shown;
}

import { compensatesFriction } from '../axis/frictionCompensation.ts';
import { isInUse } from '../axis/inUse.ts';
import { parameterLabel } from '../core/parameters/labels.ts';
import { type Parameters, parameterRow } from '../core/parameters/table.ts';
import { isTuningName, TUNING_NAMES, type TuningName } from '../core/tuning.ts';
import { siUnit } from '../core/units.ts';
import type { SheetRow, SheetSection } from './row.ts';

/** The control law that the simulation runs: gains of the same name mean other things in other drives. */
function law(p: Parameters): string[] {
  const dual = p.speedSource === 'motor encoder';
  const friction = compensatesFriction(p) ? ' + F_fc' : '';
  const known = `K_vff · v_set${friction} + F_b`;
  const feedforward = p.observer ? 'K_aff · a_set + F_k + d̂' : `K_aff · a_set + ${known}`;
  const speed = p.setSpeedDelay > 0 ? 'v_set(t − T_sd)' : 'v_set';
  const s = dual ? 's' : '';
  return [
    dual
      ? 'Once per position-loop sample T_p, in SI units: e = x_set − x, where x is the reading of the position encoder and s that of the motor encoder, in travel of the table.'
      : 'Once per position-loop sample T_p, in SI units: e = x_set − x, where x is the encoder reading.',
    `v̂ += T_p/(T_f + T_p) · ((${s || 'x'} − ${s || 'x'}_prev)/T_p − v̂)`,
    ...(p.controller === 'cascade'
      ? [
          `v* = K_v · e + w_v · ${speed}, limited to ± v_lim`,
          'v_f += T_p/(T_vc + T_p) · (v* − v_f)',
          'I += K_vel · T_p/T_n · (v_f − v̂), held while the current is limited in that direction',
          `F = K_vel · (v_f − v̂) + I + ${feedforward}`,
        ]
      : [
          'I += K_i · T_p · e, held while the current is limited in that direction',
          `F = K_p · e + I + K_d · (${speed} − v̂) + ${feedforward}`,
        ]),
    ...(p.observer
      ? [
          `F_k = ${known}`,
          'd̂ += (1 − exp(−2π f_o T_p)) · (F_prev − F_k,prev − M_o · (v̂ − v̂_prev)/T_p − d̂), where F_prev is the force of i* before',
        ]
      : []),
    ...(compensatesFriction(p) ? ['F_fc = (F_cc + F_bc · exp(−(v_set/v_bc)²)) · tanh(v_set/v_cc)'] : []),
    'i* = filter 4(filter 3(filter 2(filter 1(F))))/K_f,pk, limited to ± i_lim',
  ];
}

/** Every value that has a part in the loop, in SI and unrounded. */
export function gainSection(p: Parameters): SheetSection {
  return {
    id: 'gains',
    title: 'Gains in SI',
    text: law(p),
    rows: TUNING_NAMES.filter((name) => isInUse(name, p)).map((name) => gainRow(name, p)),
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

import { cascadeOf } from '../axis/loop/cascade.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { Basis } from './basis.ts';
import { converted, type Factor, factor, TWO_PI } from './factor.ts';
import { convertedRow, type SheetRow, type SheetSection, setRow } from './row.ts';

/** For a drive that takes one gain and time constants: in milliseconds and in position-loop samples. */
export function timeSection(p: Parameters, basis: Basis): SheetSection {
  const Tf = factor('T_f', p.derivativeTime, 's');
  const filter = [
    ...time('Time constant of the speed filter', 'T_f', [Tf], [], basis),
    ...speedFilter(p, Tf, basis),
  ];
  const title = { id: 'times', title: 'Time constants' };
  return p.controller === 'cascade'
    ? { ...title, text: [], rows: [...cascadeTimes(p, basis), ...filter] }
    : {
        ...title,
        text: ['F = K_p · (e + 1/T_i · ∫e dt + T_d · d/dt(x_set − x filtered with T_f)) + feedforward'],
        rows: [...pidTimes(p, basis), ...filter, ...equivalentReset(p, basis)],
      };
}

function pidTimes(p: Parameters, basis: Basis): SheetRow[] {
  const Kp = factor('K_p', p.Kp, 'N/m');
  const Ki = factor('K_i', p.Ki, 'N/(m·s)');
  const Kd = factor('K_d', p.Kd, 'N·s/m');
  return [
    ...(p.Ki > 0 && p.Kp > 0
      ? time('Integral action time', 'T_i', [Kp], [Ki], basis)
      : [setRow('Integral action time', 'T_i', 'none')]),
    ...(p.Kp > 0
      ? time('Derivative action time', 'T_d', [Kd], [Kp], basis)
      : [setRow('Derivative action time', 'T_d', 'none')]),
  ];
}

function equivalentReset(p: Parameters, basis: Basis): SheetRow[] {
  const cascade = cascadeOf(p);
  if (typeof cascade === 'string' || !Number.isFinite(cascade.resetTime)) return [];
  return time('Reset time of the cascade', 'T_n', [factor('T_n', cascade.resetTime, 's')], [], basis);
}

function cascadeTimes(p: Parameters, basis: Basis): SheetRow[] {
  const of = (label: string, symbol: string, value: number) =>
    value > 0
      ? time(label, symbol, [factor(symbol, value, 's')], [], basis)
      : [setRow(label, symbol, 'none')];
  return [
    ...of('Reset time of the velocity loop', 'T_n', p.resetTime),
    ...of('Time constant of the velocity-command filter', 'T_vc', p.velocityCommandFilter),
  ];
}

function time(
  label: string,
  symbol: string,
  over: readonly Factor[],
  under: readonly Factor[],
  { positionPeriod }: Basis,
): SheetRow[] {
  return [
    convertedRow(label, symbol, converted(symbol, over, under, 'ms', 1e3)),
    convertedRow(
      `${label}, in samples`,
      symbol,
      converted(`${symbol} / T_p`, over, [...under, positionPeriod], 'samples'),
    ),
  ];
}

/** The same filter as a weight and as a corner frequency. */
function speedFilter(p: Parameters, Tf: Factor, { positionPeriod }: Basis): SheetRow[] {
  const sum = p.derivativeTime + positionPeriod.value;
  const weight = factor('T_f + T_p', sum, 's');
  return [
    convertedRow(
      'Weight of a new speed reading',
      'a',
      converted('a', [positionPeriod], [{ ...weight, symbol: '(T_f + T_p)' }], ''),
    ),
    ...(p.derivativeTime > 0
      ? [
          convertedRow(
            'Corner frequency of the speed filter',
            'f_f',
            converted('f_f', [], [TWO_PI, Tf], 'Hz'),
          ),
        ]
      : []),
  ];
}

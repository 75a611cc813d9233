import { motorConstants } from '../axis/motor.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { Basis } from './basis.ts';
import { converted, type Factor, factor, fixedFactor, TWO_PI } from './factor.ts';
import { convertedRow, type SheetRow, type SheetSection } from './row.ts';

const SIXTY = fixedFactor('60 s/min', 60);

/** A screw drive referred to its motor, as torque and angle. Null for a direct drive. */
export function rotarySection(p: Parameters, { count, forcePerAmp }: Basis): SheetSection | null {
  if (p.lead === 0) return null;
  const lead = factor('p_h', p.lead, 'm');
  const perAngle = factor('(p_h/2π)', p.lead / (2 * Math.PI), 'm/rad');
  /** Force per travel becomes torque per angle by (p_h/2π)², force alone becomes torque by p_h/2π. */
  const turned = (
    label: string,
    symbol: string,
    value: number,
    unit: string,
    rotaryUnit: string,
    by: readonly Factor[],
  ): SheetRow =>
    convertedRow(
      label,
      symbol,
      converted(`${symbol} in ${rotaryUnit}`, [factor(symbol, value, unit), ...by], [], rotaryUnit),
    );
  const squared = [perAngle, perAngle];
  const peak = factor('i_pk', p.peakCurrent, 'A peak');
  return {
    id: 'rotary',
    title: 'Referred to the rotary motor',
    text: [
      'Force times p_h/2π is torque, and travel divided by p_h/2π is angle. The efficiency of the screw is part of the friction, not of the ratio.',
    ],
    rows: [
      turned('Position gain', 'K_p', p.Kp, 'N/m', 'N·m/rad', squared),
      turned('Integral gain', 'K_i', p.Ki, 'N/(m·s)', 'N·m/(rad·s)', squared),
      turned('Damping gain', 'K_d', p.Kd, 'N·s/m', 'N·m·s/rad', squared),
      turned('Speed feedforward', 'K_vff', p.speedFeedforward, 'N·s/m', 'N·m·s/rad', squared),
      turned('Acceleration feedforward', 'K_aff', p.accelerationFeedforward, 'kg', 'kg·m²', squared),
      turned('Force bias', 'F_b', p.forceBias, 'N', 'N·m', [perAngle]),
      convertedRow(
        'Torque per ampere, amplitude',
        'K_t,pk',
        converted(
          'K_t,pk = K_t / √2',
          [factor('K_f,pk', motorConstants(p).forcePerAmp, 'N/A peak'), perAngle],
          [],
          'N·m/A',
        ),
      ),
      convertedRow(
        'Peak torque at 20 °C',
        'M_pk',
        converted('M_pk', [peak, forcePerAmp, perAngle], [], 'N·m'),
      ),
      convertedRow(
        'Speed limit (trip)',
        'v_max',
        converted('v_max in rev/min', [factor('v_max', p.speedLimit, 'm/s'), SIXTY], [lead], 'rev/min'),
      ),
      ...(count === null
        ? []
        : [
            convertedRow('Counts per revolution', '', converted('p_h / q', [lead], [count], 'counts/rev')),
            convertedRow(
              'Angle of one count',
              '',
              converted('2π · q / p_h', [TWO_PI, count], [lead], 'rad/count'),
            ),
          ]),
    ],
  };
}

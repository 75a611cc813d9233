import { motorConstants } from '../axis/motor.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { Basis } from './basis.ts';
import { converted, type Factor, factor, fixedFactor, TWO_PI } from './factor.ts';
import { convertedRow, type SheetSection } from './row.ts';

/** The current loop in the forms that amplifiers ask for: V per A, with an integral gain or a reset time. */
export function currentLoopSection(p: Parameters, basis: Basis): SheetSection {
  const motor = motorConstants(p);
  const bandwidth = factor('f_bw', p.currentBandwidth, 'Hz');
  const N = factor('N', p.motorCount, '');
  const R = factor('R', motor.resistance, 'Ω');
  const L = factor('L', motor.inductance, 'H');
  const gain = converted('K_p,i', [TWO_PI, bandwidth, L], [N], 'V/A');
  const integral = converted('K_i,i', [TWO_PI, bandwidth, R], [N], 'V/(A·s)');
  const bus = factor('V_dc', p.busVoltage, 'V');
  const asFactor = (symbol: string, { value, unit }: typeof gain): Factor => factor(symbol, value, unit);
  const Kp = asFactor('K_p,i', gain);
  const Ki = asFactor('K_i,i', integral);
  const two = fixedFactor('2', 2);
  return {
    id: 'current-loop',
    title: 'Current loop',
    text: [
      'On both the d and the q axis: v = K_p,i · (i* − i) + K_i,i · ∫(i* − i) dt, with decoupling ω L i and back-EMF feedforward. i_d* = 0.',
      'Values per phase, currents and voltages as amplitudes. i is the sum of the currents of all motors, which are in parallel on the amplifier. A drive that asks for line-to-line values takes twice L and R.',
    ],
    rows: [
      convertedRow(
        'Phase resistance at 20 °C',
        'R',
        converted('R', [factor('R_ll', p.resistance, 'Ω')], [two], 'Ω'),
      ),
      convertedRow('Phase inductance', 'L', converted('L', [factor('L_ll', p.inductance, 'H')], [two], 'H')),
      convertedRow('Proportional gain', 'K_p,i', gain),
      convertedRow('Integral gain', 'K_i,i', integral),
      convertedRow(
        'Integral gain, per sample',
        'K_i,i',
        converted('K_i,i · T_s', [Ki, basis.currentPeriod], [], 'V/A'),
      ),
      convertedRow('Reset time', 'T_n,i', converted('T_n,i = K_p,i / K_i,i', [L], [R], 'ms', 1e3)),
      convertedRow(
        'Reset time, in current-loop samples',
        'T_n,i',
        converted('T_n,i / T_s', [L], [R, basis.currentPeriod], 'samples'),
      ),
      convertedRow(
        'Proportional gain, % of V_dc per % of i_pk',
        'K_p,i',
        converted('K_p,i in %/%', [Kp, basis.peakCurrent], [bus], '%/%'),
      ),
    ],
  };
}

import { coggingTerms } from '../axis/periodic.ts';
import { resistanceFactor } from '../axis/temperature.ts';
import { at } from '../core/at.ts';
import { inUnit, ranged } from '../core/format.ts';
import { speedDuty } from './demand.ts';
import { valueAt } from './duty.ts';
import { currentFor, type Voltages, voltagesAt } from './electric.ts';
import type { CandidateFacts } from './facts.ts';
import { beyondText, type Figured, limited } from './figure.ts';

/** Currents and voltage of the amplifier; amplitudes, as the drive counts them. */
export function electricFigures(facts: CandidateFacts): Figured[] {
  return [peakCurrent(facts), currentHeadroom(facts), rmsCurrent(facts), ...voltageFigures(facts)];
}

/** Where saturation does not let the motors give the force, the peak current says so for all. */
const SATURATED = '';

function perAmp({ electrics, magnet }: CandidateFacts): string {
  return `${inUnit(electrics.forcePerAmp * magnet, 'N/A')} peak`;
}

function peakCurrent(facts: CandidateFacts): Figured {
  const { p, peakForce, electrics, magnet, peakCurrent: value } = facts;
  const saturates = p.saturationCurrent > 0;
  const linear = peakForce / (electrics.forcePerAmp * magnet);
  const max = p.motorCount * p.saturationCurrent;
  return limited(
    {
      id: 'peakCurrent',
      label: 'Peak current',
      symbol: 'i_pk',
      value,
      unit: 'A',
      formula: saturates ? 'i_pk = i/√(1 − (i/N i_sat)²), i = F_pk/K_f' : 'i_pk = F_pk/K_f',
      numbers:
        `${ranged(peakForce, 'N')}/${perAmp(facts)} = ${ranged(linear, 'A peak')}` +
        (saturates
          ? `; over √(1 − (${ranged(linear, 'A peak')}/${ranged(max, 'A peak')})²) = ${ranged(value, 'A peak')}`
          : ''),
      note: 'All motors together. K_f: force per ampere peak, which is force per ampere RMS divided by √2.',
    },
    { value: p.peakCurrent, side: 'max' },
    Number.isFinite(value)
      ? beyondText(
          value,
          p.peakCurrent,
          'A',
          (own, most) => `The moves need ${own}, but the drive gives ${most}.`,
        )
      : 'The iron saturates before the motors give the peak force.',
  );
}

function currentHeadroom({ p, peakCurrent: peak }: CandidateFacts): Figured {
  const value = 1 - peak / p.peakCurrent;
  return limited(
    {
      id: 'currentHeadroom',
      label: 'Current headroom, calculated',
      symbol: '',
      value,
      unit: '%',
      formula: '1 − i_pk/i_max',
      numbers: `1 − ${ranged(peak, 'A peak')}/${ranged(p.peakCurrent, 'A peak')} = ${inUnit(value, '%')}`,
      note: 'Reserve for the control loop. A tenth to a third is usual (common practice, no source).',
    },
    { value: 0, side: 'min' },
    '',
    1 - value,
  );
}

function rmsCurrent(facts: CandidateFacts): Figured {
  const { p, rmsForce, electrics, magnet, rmsCurrent: value } = facts;
  const saturates = p.saturationCurrent > 0;
  const linear = rmsForce / (electrics.forcePerAmp * magnet);
  return limited(
    {
      id: 'rmsCurrent',
      label: 'RMS current',
      symbol: 'i_rms',
      value,
      unit: 'A',
      formula: 'i_rms = F_rms/K_f',
      numbers: `${ranged(rmsForce, 'N')}/${perAmp(facts)} = ${ranged(linear, 'A peak')}${saturates ? `; with saturation, calculated segment by segment, ${ranged(value, 'A peak')}` : ''}`,
      note: 'RMS over time of the amplitude, with magnets at room temperature.',
    },
    { value: p.continuousCurrent, side: 'max' },
    !Number.isFinite(value)
      ? SATURATED
      : beyondText(
          value,
          p.continuousCurrent,
          'A',
          (own, most) =>
            `The duty needs ${own} (RMS of the amplitude), but the continuous current of the drive is ${most}.`,
        ),
  );
}

interface VoltagePoint extends Voltages {
  readonly speed: number;
  readonly each: number;
  /** What the current against cogging takes, V. */
  readonly cogging: number;
  readonly peak: number;
}

/**
 * Amplitude of the voltage that drives the current against cogging, V: F_cog = K_f i through the impedance that the winding has at
 * the frequency of the teeth going by.
 */
function coggingVoltage({ p, electrics, magnet }: CandidateFacts, speed: number, resistance: number): number {
  if (speed === 0) return 0;
  const { count, forcePerAmp, motor } = electrics;
  return coggingTerms(p)
    .map(({ amplitude, period }) => {
      const impedance = Math.hypot(resistance, ((2 * Math.PI * speed) / period) * motor.inductance);
      return (impedance * Math.abs(amplitude)) / (count * forcePerAmp * magnet);
    })
    .reduce((sum, voltage) => sum + voltage, 0);
}

const POINTS = 8;

/** Where in the cycle the drive needs most voltage. */
function worstVoltage(facts: CandidateFacts, resistance: number): VoltagePoint {
  const { electrics, magnet, forces, motion } = facts;
  const pointAt = (speed: number, each: number): VoltagePoint => {
    const voltages = voltagesAt(electrics, each, speed, resistance, magnet);
    const cogging = coggingVoltage(facts, speed, resistance);
    return { ...voltages, speed, each, cogging, peak: voltages.total + cogging };
  };
  const speeds = speedDuty(motion);
  let worst = pointAt(0, 0);
  for (const [k, { direction }] of motion.entries()) {
    for (let point = 0; point <= POINTS; point++) {
      const speed = valueAt(at(speeds, k), point / POINTS);
      // Along the motion, positive where it drives.
      const force = valueAt(at(forces, k), point / POINTS) * (direction || 1);
      const each = currentFor(electrics, force, magnet) / electrics.count;
      const found = pointAt(speed, each);
      if (found.peak > worst.peak) worst = found;
    }
  }
  return worst;
}

function voltageFigures(facts: CandidateFacts): Figured[] {
  const { p, electrics } = facts;
  const resistance = electrics.motor.resistance * resistanceFactor(p.windingLimit);
  const { d, q, total, cogging, peak: value, backEmf, speed, each } = worstVoltage(facts, resistance);
  const limit = electrics.voltageLimit;
  const headroom = 1 - value / limit;
  return [
    limited(
      {
        id: 'voltage',
        label: 'Peak voltage of a phase',
        symbol: 'u_pk',
        value,
        unit: 'V',
        formula:
          'u_pk = √(u_d² + u_q²), u_d = −ωL i_q, u_q = R i_q + e, ω = πv/τ' +
          (cogging > 0 ? ', plus √(R² + (2πvL/λ)²) F_cog/(N K_f) of each cogging term' : ''),
        numbers:
          `at ${ranged(speed, 'm/s')} and ${ranged(each, 'A peak')} in each motor: u_d = −${inUnit(electrics.perPitch * speed, '1/s')} · ` +
          `${inUnit(electrics.motor.inductance, 'mH')} · ${ranged(each, 'A peak')} = ${ranged(d, 'V')}; u_q = ${inUnit(resistance, 'Ω')} · ${ranged(each, 'A peak')} + ` +
          `${ranged(backEmf, 'V')} = ${ranged(q, 'V')}; √(…) = ${ranged(total, 'V')}` +
          (cogging > 0 ? `; with ${ranged(cogging, 'V')} for cogging ${ranged(value, 'V')}` : ''),
        note: 'At the worst instant of the cycle, with the winding at its limit, cool magnets and every cogging term at its peak. The limit is V_dc/√3. The voltage that changes the current with the acceleration (L di/dt) is neglected.',
      },
      { value: limit, side: 'max' },
      !Number.isFinite(value)
        ? SATURATED
        : beyondText(
            value,
            limit,
            'V',
            (own, most) => `The moves need ${own}, but a bus of ${ranged(p.busVoltage, 'V')} gives ${most}.`,
          ),
    ),
    limited(
      {
        id: 'voltageHeadroom',
        label: 'Voltage headroom, calculated',
        symbol: '',
        value: headroom,
        unit: '%',
        formula: '1 − u_pk/(V_dc/√3)',
        numbers: `1 − ${ranged(value, 'V')}/(${ranged(p.busVoltage, 'V')}/√3) = ${inUnit(headroom, '%')}`,
        note: 'Reserve for fast current changes and a sagging bus. A tenth to a fifth is usual (common practice, no source).',
      },
      { value: 0, side: 'min' },
      '',
      value / limit,
    ),
  ];
}

import { positionRate } from '../core/crossChecks.ts';
import { FILTER_NUMBERS, type FilterNumber } from '../core/parameters/filters.ts';
import { parameterNamed as named } from '../core/parameters/labels.ts';
import type { Parameters } from '../core/parameters/table.ts';
import { approx, type Sentence, sentence } from '../core/sentence.ts';
import { overcompensationWarning } from './frictionCompensation.ts';
import { holdingForce, slopeForce } from './gravity.ts';
import { filterCoefficients, staticGain } from './loop/filterSections.ts';
import { motorConstants, voltageLimit, windingToAmbientResistance } from './motor.ts';
import { resistanceFactor } from './temperature.ts';

/** A datasheet rounds; beyond this share, force constant and back-EMF do not belong to the same motor. */
const BACK_EMF_TOLERANCE = 0.05;
/** Room of the datasheet, °C. */
const DATASHEET_ROOM = 22;
/** Datasheets round, and saturation and warm magnets take their share: beyond this it is a contradiction. */
const CONTINUOUS_FORCE_TOLERANCE = 0.25;
/** Coefficients are printed with a few digits. */
const STATIC_GAIN_TOLERANCE = 0.01;
/** Share of the weight that a constant force may leave to the integrator. */
const HOLDING_TOLERANCE = 0.1;

/** Sentences about a legal set of parameters that is probably not what was meant. */
export function parameterWarnings(p: Parameters): Sentence[] {
  return [
    backEmfWarning(p),
    continuousForceWarning(p),
    holding(p),
    overcompensationWarning(p),
    ...FILTER_NUMBERS.map((n) => filterGainWarning(p, n)),
    currentLoop(p),
    voltage(p),
    speedTrip(p),
    touching(p),
  ].filter((warning) => warning !== null);
}

/** Whether force constant and back-EMF can be of one motor. */
export function backEmfWarning(p: Parameters): Sentence | null {
  if (p.backEmfConstant === 0) return null;
  const { backEmf } = motorConstants(p);
  const off = p.backEmfConstant / backEmf - 1;
  if (Math.abs(off) <= BACK_EMF_TOLERANCE) return null;
  const constant = named(p.lead > 0 ? 'torqueConstant' : 'forceConstant');
  return sentence`${named('backEmfConstant')} (${approx(p.backEmfConstant, 'V·s/m')}) is
    ${approx(Math.abs(off), '%', 2)} ${off > 0 ? 'above' : 'below'} the value that matches ${constant},
    ${approx(backEmf, 'V·s/m')}. ${confusion(Math.abs(off) > 0 ? p.backEmfConstant / backEmf : 1)}`;
}

/** What a factor between two constants of a motor looks like: √2 between RMS and peak, √3 between phase and line to line. */
function confusion(ratio: number): string {
  const near = (factor: number) => Math.abs(Math.max(ratio, 1 / ratio) / factor - 1) < BACK_EMF_TOLERANCE;
  if (near(Math.SQRT2)) return 'The factor is √2: one of them is given for peak values, not RMS.';
  if (near(Math.sqrt(3))) return 'The factor is √3: the back-EMF is given for one phase, not line to line.';
  if (near(Math.sqrt(6))) return 'The factor is √6: the back-EMF is given for one phase and peak values.';
  return 'Check both: line to line, RMS.';
}

/**
 * Whether the continuous force of the datasheet is what its winding and its thermal resistance allow: at standstill, in a room of
 * 22 °C, without coolant.
 */
function continuousForceWarning(p: Parameters): Sentence | null {
  if (p.lead > 0 || p.cooling) return null;
  const thermalResistance = windingToAmbientResistance(p);
  const copper = (p.windingLimit - DATASHEET_ROOM) / thermalResistance / p.motorCount;
  const { resistance, forcePerAmp } = motorConstants(p);
  const force = forcePerAmp * Math.sqrt(copper / (1.5 * resistance * resistanceFactor(p.windingLimit)));
  if (Math.abs(p.continuousForce / force - 1) <= CONTINUOUS_FORCE_TOLERANCE) return null;
  const fitting = thermalResistance * (force / p.continuousForce) ** 2;
  return sentence`${named('continuousForce')} (${approx(p.continuousForce, 'N')}) contradicts the winding and its thermal
    resistance, ${approx(thermalResistance, 'K/W')} to air: with them the winding reaches
    ${approx(p.windingLimit, '°C')} at ${approx(force, 'N')}. To give ${approx(p.continuousForce, 'N')} it would need
    ${approx(fitting, 'K/W')}. The simulation follows the thermal resistance.`;
}

/** Coefficients may be anything; a filter that does not pass what is constant changes every gain of the loop. */
function filterGainWarning(p: Parameters, n: FilterNumber): Sentence | null {
  if (p[`filter${n}`] !== 'coefficients') return null;
  const gain = staticGain(filterCoefficients(p, n, positionRate(p)));
  if (Math.abs(gain - 1) <= STATIC_GAIN_TOLERANCE) return null;
  return sentence`Filter ${String(n)} has a gain of ${approx(gain, '')} at standstill: it multiplies every gain of the loop,
    force bias and feedforward included. Divide its b-coefficients by ${approx(gain, '')} unless that is meant.`;
}

function holding(p: Parameters): Sentence | null {
  if (p.drive !== 'on' || p.inclination === 0) return null;
  const missing = holdingForce(p) - p.forceBias;
  if (Math.abs(missing) <= HOLDING_TOLERANCE * Math.abs(slopeForce(p))) return null;
  return sentence`The inclined axis needs ${approx(holdingForce(p), 'N')} to hold its position and
    ${named('forceBias')} gives ${approx(p.forceBias, 'N')}: it will sag when it starts, until the integrator
    holds it. Set ${named('forceBias')} or ${named('counterbalance')}.`;
}

/** One period of computing and half a period of held voltage delay the current loop by 1.5 periods: 540° f/rate. */
function currentLoop(p: Parameters): Sentence | null {
  if (p.currentBandwidth <= p.currentRate / 10) return null;
  return sentence`${named('currentBandwidth')} (${approx(p.currentBandwidth, 'Hz')}) is above a tenth of
    ${named('currentRate')}: the delay of 1.5 periods leaves the current loop less than 36° of phase margin.`;
}

/** Largest speed that the program commands, m/s. */
function commandedSpeed(p: Parameters): number {
  switch (p.program) {
    case 'shuttle':
      return p.speed;
    case 'scan':
      return Math.max(p.scanSpeed, p.speed);
    case 'sine':
      return 2 * Math.PI * p.sineFrequency * p.sineAmplitude;
    default:
      return 0;
  }
}

function voltage(p: Parameters): Sentence | null {
  const { flux, polePitch } = motorConstants(p);
  const reachable = voltageLimit(p) / ((Math.PI / polePitch) * flux);
  if (commandedSpeed(p) < reachable) return null;
  return sentence`The back-EMF reaches the bus voltage at ${approx(reachable, 'm/s')}, below the commanded
    ${approx(commandedSpeed(p), 'm/s')}: the axis cannot follow. Raise ${named('busVoltage')} or lower the speed.`;
}

function speedTrip(p: Parameters): Sentence | null {
  if (commandedSpeed(p) < p.speedLimit) return null;
  return sentence`The commanded speed, ${approx(commandedSpeed(p), 'm/s')}, reaches ${named('speedLimit')}
    (${approx(p.speedLimit, 'm/s')}): the drive will trip. Raise ${named('speedLimit')} or lower the speed.`;
}

function touching(p: Parameters): Sentence | null {
  const isFree = p.lead > 0 || p.fieldLaw === 'none' || Math.abs(p.coilOffset) < p.airGap;
  if (isFree) return null;
  return sentence`${named('coilOffset')} (${approx(Math.abs(p.coilOffset), 'mm')}) is not below ${named('airGap')}
    (${approx(p.airGap, 'mm')}): the coil unit touches the magnets. Lower ${named('coilOffset')} or raise ${named('airGap')}.`;
}

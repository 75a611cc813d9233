import { inUnit } from '../core/format.ts';
import type { Parameters } from '../core/parameters/table.ts';
import { holdingForce, slopeForce } from './gravity.ts';
import { motorConstants, voltageLimit } from './motor.ts';

/** A datasheet rounds; beyond this share, force constant and back-EMF do not belong to the same motor. */
const BACK_EMF_TOLERANCE = 0.05;
/** Share of the weight that a constant force may leave to the integrator. */
const HOLDING_TOLERANCE = 0.1;

/** Sentences about a legal set of parameters that is probably not what was meant. */
export function parameterWarnings(p: Parameters): string[] {
  return [backEmfWarning(p), holding(p), currentLoop(p), voltage(p), speedTrip(p)].filter(
    (warning) => warning !== null,
  );
}

/** Whether force constant and back-EMF can be of one motor. */
export function backEmfWarning(p: Parameters): string | null {
  if (p.backEmfConstant === 0) return null;
  const { backEmf } = motorConstants(p);
  const off = p.backEmfConstant / backEmf - 1;
  if (Math.abs(off) <= BACK_EMF_TOLERANCE) return null;
  const constant = p.lead > 0 ? 'torqueConstant' : 'forceConstant';
  return (
    `backEmfConstant (${inUnit(p.backEmfConstant, 'V·s/m')}) is ${inUnit(Math.abs(off), '%', 2)} ${off > 0 ? 'above' : 'below'} what belongs to ` +
    `${constant}, ${inUnit(backEmf, 'V·s/m')}. Check both: line to line, rms.`
  );
}

function holding(p: Parameters): string | null {
  if (p.drive !== 'on' || p.inclination === 0) return null;
  const missing = holdingForce(p) - p.forceBias;
  if (Math.abs(missing) <= HOLDING_TOLERANCE * Math.abs(slopeForce(p))) return null;
  return (
    `The inclined axis needs ${inUnit(holdingForce(p), 'N')} to stand still and forceBias gives ${inUnit(p.forceBias, 'N')}: ` +
    'it will sag when it starts, until the integrator holds it. Set forceBias or counterbalance.'
  );
}

/** One period of computing and half a period of held voltage delay the current loop by 1.5 periods: 540° f/rate. */
function currentLoop(p: Parameters): string | null {
  if (p.currentBandwidth <= p.currentRate / 10) return null;
  return (
    `currentBandwidth (${inUnit(p.currentBandwidth, 'Hz')}) is above a tenth of currentRate: the delay of 1.5 periods ` +
    'leaves the current loop less than 36° of phase margin.'
  );
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

function voltage(p: Parameters): string | null {
  const { flux, polePitch } = motorConstants(p);
  const reachable = voltageLimit(p) / ((Math.PI / polePitch) * flux);
  if (commandedSpeed(p) < reachable) return null;
  return (
    `The back-EMF meets the bus voltage at ${inUnit(reachable, 'm/s')}, below the commanded ${inUnit(commandedSpeed(p), 'm/s')}: ` +
    'the axis cannot follow. Raise busVoltage or lower the speed.'
  );
}

function speedTrip(p: Parameters): string | null {
  if (commandedSpeed(p) < p.speedLimit) return null;
  return (
    `The commanded speed, ${inUnit(commandedSpeed(p), 'm/s')}, reaches speedLimit (${inUnit(p.speedLimit, 'm/s')}): the drive will trip. ` +
    'Raise speedLimit or lower the speed.'
  );
}

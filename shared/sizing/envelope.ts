import { continuousForce } from '../axis/motor.ts';
import { resistanceFactor } from '../axis/temperature.ts';
import { at } from '../core/at.ts';
import { speedDuty } from './demand.ts';
import { rms, type Stretch, valueAt } from './duty.ts';
import { currentAtVoltage, type Electrics, forceAt } from './electric.ts';
import type { CandidateFacts } from './facts.ts';
import type { Envelope } from './sizing.ts';

/** Points of each curve, and of each stretch of the trajectory. */
const CURVE_POINTS = 121;
const STRETCH_POINTS = 8;

/**
 * What the motors can give at each speed with windings at their limit: the peak of the amplifier and what heat allows continuously, both
 * as far as the voltage reaches, up to the speed that trips the drive.
 */
export function envelopeOf({ p, forces, motion, electrics: e, magnet, rmsForce }: CandidateFacts): Envelope {
  const hot = e.motor.resistance * resistanceFactor(p.windingLimit);
  const last = Math.min(noLoadSpeed(e, magnet), p.speedLimit);
  const speed = Array.from({ length: CURVE_POINTS }, (_, k) => (last * k) / (CURVE_POINTS - 1));
  const within = (current: number) =>
    speed.map((v) => forceAt(e, Math.min(current, e.count * currentAtVoltage(e, v, hot, magnet)), magnet));
  const forEver = continuousForce(p);
  const speeds = speedDuty(motion);
  return {
    speed: [...speed, last],
    peak: [...within(p.peakCurrent), 0],
    continuous: [...within(p.continuousCurrent).map((force) => Math.min(force, forEver)), 0],
    trajectory: trajectoryOf(forces, speeds),
    rms: { speed: rms(speeds), force: rmsForce },
  };
}

/** Where the back-EMF alone takes all of the voltage, m/s. */
function noLoadSpeed(e: Electrics, magnet: number): number {
  return e.voltageLimit / ((2 / 3) * e.forcePerAmp * magnet);
}

function trajectoryOf(forces: readonly Stretch[], speeds: readonly Stretch[]): Envelope['trajectory'] {
  return forces.flatMap((force, k) =>
    Array.from({ length: STRETCH_POINTS + 1 }, (_, point) => {
      const share = point / STRETCH_POINTS;
      return { speed: valueAt(at(speeds, k), share), force: Math.abs(valueAt(force, share)) };
    }),
  );
}

import { magnetFactor } from '../axis/temperature.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { DriveType, Scene } from '../core/scene.ts';
import { cycleMotion, type MotionStretch } from '../motion/cycleMotion.ts';
import type { Job } from '../study/job.ts';
import {
  forceDuty,
  type Loads,
  loadsOf,
  type MeanPowers,
  meanPowers,
  movingShare,
  swingSquare,
  type Worst,
  worstForce,
} from './demand.ts';
import { mapped, meanSquare, type Stretch } from './duty.ts';
import { currentFor, type Electrics, electricsOf } from './electric.ts';
import { type SteadyHeat, steadyHeat } from './steadyHeat.ts';

/** Everything that the figures of a candidate are made of, worked out once. SI. */
export interface CandidateFacts {
  readonly job: Job;
  readonly driveType: DriveType;
  readonly p: Parameters;
  readonly motion: readonly MotionStretch[];
  readonly moving: number;
  readonly loads: Loads;
  readonly forces: readonly Stretch[];
  readonly worst: Worst;
  /** With the process at its worst and cogging against it. */
  readonly peakForce: number;
  readonly rmsForce: number;
  readonly electrics: Electrics;
  /** Flux of the magnets in the room over that at 20 °C. */
  readonly magnet: number;
  readonly peakCurrent: number;
  readonly rmsCurrent: number;
  readonly powers: MeanPowers;
  /** Null: no end to it. */
  readonly heat: SteadyHeat | null;
}

export function candidateFacts(job: Job, scene: Scene): CandidateFacts {
  const p = scene.parameters;
  const motion = cycleMotion(scene);
  const loads = loadsOf(p);
  const forces = forceDuty(loads, motion);
  const moving = movingShare(motion);
  const swing = swingSquare(loads, moving);
  const worst = worstForce(loads, motion);
  const cogging = worst.direction === 0 ? 0 : loads.cogging.reduce((sum, amplitude) => sum + amplitude, 0);
  const peakForce = Math.abs(worst.force) + cogging;
  const electrics = electricsOf(p);
  const magnet = magnetFactor(p, p.ambient);
  const powers = meanPowers(p, loads, motion);
  /** What swings beside the motion adds its own square, at the current per force of small forces. */
  const squareCurrent = (flux: number) => {
    if (!Number.isFinite(currentFor(electrics, worst.force, flux))) return Infinity;
    const currents = mapped(forces, (force) => currentFor(electrics, force, flux));
    return meanSquare(currents) + swing / (electrics.forcePerAmp * flux) ** 2;
  };
  return {
    job,
    driveType: scene.driveType,
    p,
    motion,
    moving,
    loads,
    forces,
    worst,
    peakForce,
    rmsForce: Math.sqrt(meanSquare(forces) + swing),
    electrics,
    magnet,
    peakCurrent: currentFor(electrics, peakForce, magnet),
    rmsCurrent: Math.sqrt(squareCurrent(magnet)),
    powers,
    heat: steadyHeat(p, powers, squareCurrent),
  };
}

import { viscousDrag } from '../../shared/axis/drag.ts';
import { holdingForce } from '../../shared/axis/gravity.ts';
import { rounded } from '../../shared/axis/loop/tunedValue.ts';
import { motorConstants } from '../../shared/axis/motor.ts';
import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { movedMass } from '../../shared/core/movedMass.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import { NormalEquations } from '../math/normalEquations.ts';
import { measureTrial } from '../run/measureRun.ts';
import type { Task } from './task.ts';

/** The force that moves an axis, as its controller commands force. */
export interface MotionForce {
  /** Force per acceleration, kg, and per speed, N·s/m. */
  readonly mass: number;
  readonly drag: number;
  readonly source: 'datasheet' | 'run';
  /** Deviation of the mass from the force balance, chosen by simulated runs, as a share. */
  readonly trim: number;
}

/** From the datasheet: all moving mass, rotation included, and all viscous drag. */
export function datasheetMotion(p: Parameters): MotionForce {
  return {
    mass: movedMass(p),
    drag: viscousDrag(p),
    source: 'datasheet',
    trim: 0,
  };
}

/** Samples below this share of the top speed are left out: friction is not constant there. */
const FAST_ENOUGH = 0.1;
/** Share of the force that the law may leave unexplained. */
const MAX_UNEXPLAINED = 0.1;

/**
 * Least squares fit of the commanded force to the set motion of a simulated run: F = m a + d v +
 * F_c sgn v + F_0. It finds what a datasheet cannot know: motors that brake each other, iron that
 * saturates, magnets that are warm. Where the run does not obey this law, the datasheet counts.
 */
export function measuredMotion({ scene, seconds }: Task, changes: ParameterChanges): MotionForce {
  const p = { ...scene.parameters, ...changes };
  const forcePerAmp = motorConstants(p).forcePerAmp;
  const samples: { readonly acceleration: number; readonly speed: number; readonly force: number }[] = [];
  const { trip } = measureTrial({ ...scene, parameters: p }, seconds, (record) => {
    const speed = valueAt(record, C.setSpeed);
    if (speed === 0) return;
    const acceleration = valueAt(record, C.setAcceleration);
    samples.push({ acceleration, speed, force: forcePerAmp * valueAt(record, C.currentCommand) });
  });
  const topSpeed = samples.reduce((max, { speed }) => Math.max(max, Math.abs(speed)), 0);
  const fast = samples.filter(({ speed }) => Math.abs(speed) >= FAST_ENOUGH * topSpeed);
  const equations = new NormalEquations(4);
  let total = 0;
  for (const { acceleration, speed, force } of fast) {
    equations.add([acceleration, speed, Math.sign(speed), 1], force);
    total += force ** 2;
  }
  const found = equations.solve();
  if (trip || found === null) return datasheetMotion(p);
  const [mass = 0, drag = 0, sliding = 0, constant = 0] = found;
  const unexplained = fast.reduce((sum, { acceleration, speed, force }) => {
    const law = mass * acceleration + drag * speed + sliding * Math.sign(speed) + constant;
    return sum + (force - law) ** 2;
  }, 0);
  if (unexplained > MAX_UNEXPLAINED ** 2 * total) return datasheetMotion(p);
  return { mass, drag: Math.max(drag, 0), source: 'run', trim: 0 };
}

/** Delay of the measured speed, s: half a sample from the difference, and the filter. */
export function speedLag(p: Pick<Parameters, 'derivativeTime' | 'currentRate' | 'positionDivider'>): number {
  return p.derivativeTime + p.positionDivider / p.currentRate / 2;
}

/**
 * Feedforward carries the axis alone: the commanded speed is delayed by as much as the measured one lags, so that the two agree in a
 * move and the feedback has nothing to do, whatever its gain.
 */
export function feedforward(p: Parameters, motion: MotionForce): ParameterChanges {
  return {
    accelerationFeedforward: rounded('accelerationFeedforward', motion.mass * (1 + motion.trim)),
    speedFeedforward: rounded('speedFeedforward', motion.drag),
    forceBias: rounded('forceBias', holdingForce(p)),
    setSpeedDelay: rounded('setSpeedDelay', speedLag(p)),
    ...(p.controller === 'cascade' && { velocityFeedforward: 1 }),
  };
}

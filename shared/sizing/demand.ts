import { type Drag, dryMotorDrag, ironDrag, nutDrag, viscousDrag } from '../axis/drag.ts';
import { holdingForce } from '../axis/gravity.ts';
import { guideLoad, slidingFriction } from '../axis/guide.ts';
import { coggingTerms } from '../axis/periodic.ts';
import { at, present } from '../core/at.ts';
import { loadSideMass, movedMass, translatingMotorMass } from '../core/movedMass.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { MotionStretch } from '../motion/cycleMotion.ts';
import type { Setpoint } from '../motion/setpoint.ts';
import { durationFactor, integral, meanSquare, type Stretch, totalTime } from './duty.ts';

/** What resists a motion, as the model has it. SI. */
export interface Loads {
  /** Everything that is sped up, M, and of it what travels: a screw turns. */
  readonly mass: number;
  readonly travellingMass: number;
  /** Normal load of the guide, and its sliding friction. */
  readonly normal: number;
  readonly guide: number;
  /** Dry drag on the motor side: hysteresis, nut and bearings. */
  readonly drag: number;
  /** Force per speed, all of it. */
  readonly viscous: number;
  /** What holds the axis against gravity, less the counterbalance. */
  readonly holding: number;
  /** Cogging: amplitudes of the terms that it has. */
  readonly cogging: readonly number[];
  /** Process force along +x: its mean, what it swings between, and the mean square of what it swings by. */
  readonly process: {
    readonly mean: number;
    readonly min: number;
    readonly max: number;
    readonly variance: number;
  };
  /** Process force against the motion, while it moves. */
  readonly feed: number;
}

export function loadsOf(p: Parameters): Loads {
  return {
    mass: movedMass(p),
    travellingMass: translatingMotorMass(p) + loadSideMass(p),
    normal: guideLoad(p),
    guide: slidingFriction(p),
    drag: dryMotorDrag(p),
    viscous: viscousDrag(p),
    holding: holdingForce(p),
    cogging: coggingTerms(p).map(({ amplitude }) => amplitude),
    process: processOf(p),
    feed: p.process === 'feed' ? p.processForce : 0,
  };
}

function processOf({
  process,
  processForce: F,
  processTime,
  processFrequency,
}: Parameters): Loads['process'] {
  const share = processTime * processFrequency;
  switch (process) {
    case 'none':
    case 'feed':
      return { mean: 0, min: 0, max: 0, variance: 0 };
    case 'constant':
      return { mean: F, min: F, max: F, variance: 0 };
    case 'sine':
      return { mean: 0, min: -Math.abs(F), max: Math.abs(F), variance: (F * F) / 2 };
    case 'pulse':
      return {
        mean: share * F,
        min: Math.min(F, 0),
        max: Math.max(F, 0),
        variance: share * (1 - share) * F * F,
      };
  }
}

/** Which way a stretch goes, and what the process does against it alone. */
type Way = Pick<MotionStretch, 'direction' | 'cutting'>;

/** Force of all motors at a setpoint under the mean process force, N: F = M a + d v ± (F_c + F_drag + F_feed) + F_hold − F_P. */
function motorForce(loads: Loads, { speed, acceleration }: Setpoint, { direction, cutting }: Way): number {
  const dry = loads.guide + loads.drag + loads.feed + cutting;
  return (
    loads.mass * acceleration + loads.viscous * speed + direction * dry + loads.holding - loads.process.mean
  );
}

/** The same over a whole cycle. */
export function forceDuty(loads: Loads, motion: readonly MotionStretch[]): Stretch[] {
  return duty(motion, (point, way) => motorForce(loads, point, way));
}

export function speedDuty(motion: readonly MotionStretch[]): Stretch[] {
  return duty(motion, ({ speed }) => Math.abs(speed));
}

function duty(motion: readonly MotionStretch[], value: (point: Setpoint, way: Way) => number): Stretch[] {
  return motion.map(({ points: [start, middle, end], ...stretch }) => ({
    time: stretch.time,
    start: value(start, stretch),
    middle: value(middle, stretch),
    end: value(end, stretch),
  }));
}

/** Share of the cycle in which it moves. */
export function movingShare(motion: readonly MotionStretch[]): number {
  const timeOf = (stretches: readonly MotionStretch[]) => stretches.reduce((sum, { time }) => sum + time, 0);
  const moving = timeOf(motion.filter(({ direction }) => direction !== 0));
  return durationFactor(moving, timeOf(motion) - moving);
}

/** Mean square of what swings beside the motion and takes no part in it: process, and cogging while it moves, N². */
export function swingSquare(loads: Loads, moving: number): number {
  const cogging = loads.cogging.reduce((sum, amplitude) => sum + amplitude ** 2 / 2, 0);
  return loads.process.variance + moving * cogging;
}

/** Where the motors have to give most. */
export interface Worst {
  readonly point: Setpoint;
  readonly direction: number;
  /** Against the motion, by the process: of all moves and of this one, N. */
  readonly feed: number;
  /** Signed, N; with the process at its worst, without cogging. */
  readonly force: number;
  /** The process force that makes it so, N. */
  readonly process: number;
}

export function worstForce(loads: Loads, motion: readonly MotionStretch[]): Worst {
  const { mean, min, max } = loads.process;
  let worst: Worst | null = null;
  for (const { points, ...way } of motion) {
    for (const point of points) {
      for (const process of [min, max]) {
        const force = motorForce(loads, point, way) + mean - process;
        if (worst && Math.abs(force) <= Math.abs(worst.force)) continue;
        const { direction, cutting } = way;
        worst = { point, direction, feed: loads.feed + cutting, force, process };
      }
    }
  }
  return present(worst);
}

/** Mean power that turns into heat, W: guide, iron of the motors, nut and bearings; and what the process takes. */
export interface MeanPowers {
  readonly guide: number;
  readonly iron: number;
  readonly nut: number;
  readonly process: number;
}

export function meanPowers(p: Parameters, loads: Loads, motion: readonly MotionStretch[]): MeanPowers {
  const speeds = speedDuty(motion);
  const time = totalTime(speeds);
  const distance = speeds.reduce((sum, each) => sum + integral(each), 0) / time;
  const square = meanSquare(speeds);
  const cut = speeds.reduce((sum, each, k) => sum + at(motion, k).cutting * integral(each), 0) / time;
  const lost = ({ dry, viscous }: Drag) => dry * distance + viscous * square;
  return {
    guide: lost({ dry: loads.guide, viscous: p.viscous }),
    iron: lost(ironDrag(p)),
    nut: lost(nutDrag(p)),
    process: lost({ dry: loads.feed, viscous: 0 }) + cut,
  };
}

import { motorConstants } from '../../shared/axis/motor.ts';
import { at, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { type CoggingTable, MAX_TABLE_FORCES, tableMachine } from '../../shared/core/coggingTable.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { LearnedCogging } from '../../shared/protocol/cogging.ts';
import { TestAxis, tested } from './testAxis.ts';

/*
 * Cogging as a drive can learn it: current and encoder position in a slow scan to and fro over the middle part of the travel.
 *
 *   F(x)     = K_f i_q          mean over one spacing about x, in each direction
 *   F_cog(x) = (F→ + F←)/2      friction and drag change sign with the direction and cancel
 *   F_fric   = (F→ − F←)/2
 *
 * m, N. The mean of F_cog is taken out: weight and bias are the business of the constant force. Common practice, no source.
 */

/** Spacings in one pole pitch: straight lines between them follow a third of a pole pitch to 1 %. */
const PER_POLE_PITCH = 96;
/** Longest scan in one direction, s, and its lowest speed, m/s: cogging passes far below the bandwidth of any loop. */
const LONGEST = 10;
const LOWEST_SPEED = 0.005;
/** Kept free at both ends of the scan: run-in of the loop and of the presliding of the guide, s at the speed of the scan. */
const RUN_IN = 0.5;
/** Limits of the scan, m/s² and m/s³. */
const LIMITS = { acceleration: 0.5, jerk: 20 };
/** A table whose peak is below this share of the continuous force is not worth having. */
const WORTH = 0.005;

interface Scan {
  readonly from: number;
  readonly spacing: number;
  readonly count: number;
  readonly speed: number;
  readonly runUp: number;
}

/** Where the scan goes: as far as the travel allows about the middle of what the program covers, at most MAX_TABLE_FORCES places. */
function plan(p: Parameters): Scan | null {
  const { polePitch } = motorConstants(p);
  const room = { min: p.travelMin, max: p.travelMax };
  const spacing = polePitch / PER_POLE_PITCH;
  const wanted = Math.min(room.max - room.min, (MAX_TABLE_FORCES - 1) * spacing);
  const speed = Math.max(LOWEST_SPEED, wanted / LONGEST);
  const runUp = (speed * speed) / LIMITS.acceleration + RUN_IN * speed;
  const length = wanted - 2 * runUp;
  const count = Math.floor(length / spacing);
  if (count < PER_POLE_PITCH / 2) return null;
  const centre = Math.min(Math.max(p.start, room.min + wanted / 2), room.max - wanted / 2);
  return { from: centre - ((count - 1) * spacing) / 2, spacing, count, speed, runUp };
}

/** Learns the cogging of a machine from its own current and encoder. */
export function learnCogging(scene: Scene): LearnedCogging {
  const { parameters: p } = scene;
  const scan = plan(p);
  if (scan === null) {
    return {
      refused: 'The travel is shorter than half a pole pitch with the run-up of the scan: widen the travel.',
    };
  }
  return tested(() => learned(scene, scan));
}

function learned(scene: Scene, scan: Scan) {
  const { from, spacing, count, speed, runUp } = scan;
  const p = scene.parameters;
  const { forcePerAmp } = motorConstants(p);
  const [left, right] = [from - spacing / 2 - runUp, from + (count - 0.5) * spacing + runUp];
  const axis = new TestAxis(scene, left, { speed, ...LIMITS, drive: 'on', coggingCompensation: false });
  const directions = [right, left].map((end) => {
    const sums = new Float64Array(count);
    const counts = new Float64Array(count);
    axis.settle();
    axis.goTo(end, () => {
      const place = Math.round((valueAt(axis.motion, C.encoderPosition) - from) / spacing);
      if (place < 0 || place >= count) return;
      sums[place] = valueAt(sums, place) + forcePerAmp * valueAt(axis.motion, C.forceCurrent);
      counts[place] = valueAt(counts, place) + 1;
    });
    return sums.map((sum, k) => sum / Math.max(valueAt(counts, k), 1));
  });
  const [there, back] = [at(directions, 0), at(directions, 1)];
  const both = there.map((force, k) => (force + valueAt(back, k)) / 2);
  const mean = both.reduce((sum, force) => sum + force, 0) / count;
  const forces = Array.from(both, (force) => Math.round((force - mean) * 1e3) / 1e3);
  const table: CoggingTable = { from, spacing, scanSpeed: speed, forces, machine: tableMachine(p) };
  const friction = there.reduce((sum, force, k) => sum + (force - valueAt(back, k)) / 2, 0) / count;
  const peak = Math.max(...forces.map(Math.abs));
  return { table, friction, nothingToGain: peak < WORTH * p.continuousForce * p.motorCount };
}

import { memoryUsage } from 'node:process';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { sceneById } from '../../scenes/index.ts';
import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { cycleTime } from '../../shared/motion/cycle.ts';
import { Session } from '../../workers/run/session.ts';
import { timeLapse } from '../../workers/timelapse/timeLapse.ts';

/* The live model and the time-lapse at work for long, to see that nothing grows or creeps. */

/** Each of another kind: moves, a scan over cogging, steps of a nanometre, lost motion, gravity, four motors, a base that moves. */
export const SOAK_SCENES = [
  'mould-shuttle',
  'slow-scan-iron',
  'nanometre-staircase',
  'screw-backlash',
  'vertical-counterbalance',
  'four-motors-one-misaligned',
  'soft-base',
] as const;

/** A number kept of every sample of the position loop would be a megabyte within 16 s at 8 kHz. */
const HEAP_BOUND = 1_000_000;
/** How far the mean following error of a cycle may move, as a share of the settling window. */
const DRIFT_BOUND = 0.01;
/** A quarter of the run passes before anything is compared. */
const WARM_UP = 0.25;

interface LiveSoak {
  readonly scene: string;
  /** Simulated, s. */
  readonly seconds: number;
  readonly cycles: number;
  /** Of the process after forced collection, from the end of the warm-up on, bytes. */
  readonly heapGrowth: number;
  /** Mean following error of the last pair of cycles less that of the first after the warm-up, over the settling window. */
  readonly drift: number;
  /** Energy residual over throughput. */
  readonly residual: number;
  readonly failures: readonly string[];
}

interface LapseSoak {
  readonly scene: string;
  readonly hours: number;
  readonly heapGrowth: number;
  readonly failures: readonly string[];
}

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc') as () => void;

/** What the process holds once a further collection frees no more, bytes: buffers are given back late. */
function heldMemory(): number {
  for (let before = Number.POSITIVE_INFINITY; ; ) {
    collectGarbage();
    const { heapUsed, arrayBuffers } = memoryUsage();
    const now = heapUsed + arrayBuffers;
    if (now >= before) return before;
    before = now;
  }
}

/** Runs a scene as the page does for so many seconds of simulated time, its damping raised and put back cycle by cycle. */
export function soakLive(id: string, seconds: number): LiveSoak {
  const scene = sceneById(id);
  const { parameters: p } = scene;
  const period = cycleTime(scene);
  if (period === null) throw new Error(`${id} has no cycle.`);
  const pairs = Math.max(Math.floor(seconds / (2 * period)), 3);
  const warmUp = Math.ceil(WARM_UP * pairs);
  const session = new Session(scene);
  const means: number[] = [];
  const failures: string[] = [];
  let [held, spare]: [number, Float64Array<ArrayBuffer> | null] = [0, null];
  let [sum, samples, cycle] = [0, 0, 0];
  while (means.length < pairs && session.canStep) {
    const { axis } = session;
    if (axis.command.cycle !== cycle) {
      cycle = axis.command.cycle;
      if (cycle % 2 === 0) {
        means.push(sum / samples);
        [sum, samples] = [0, 0];
        if (means.length === warmUp) held = heldMemory();
      }
      session.change({ Kd: (cycle % 2 === 0 ? 1 : 1.05) * p.Kd });
    }
    session.step();
    if (session.recorder.full) spare = session.recorder.hand(spare).bins;
    if (!axis.record.every(Number.isFinite)) failures.push(`a channel is not a number at ${axis.time} s`);
    if (failures.length > 0) break;
    sum += valueAt(axis.record, C.followingError);
    samples++;
  }
  const { axis } = session;
  const heapGrowth = heldMemory() - held;
  const drift = ((means.at(-1) ?? 0) - (means[warmUp] ?? 0)) / p.window;
  if (axis.trip) failures.push(`the drive tripped: ${axis.trip.kind}`);
  if (!axis.audit.holds) failures.push(`the energy account is off by ${axis.audit.relativeResidual}`);
  if (heapGrowth > HEAP_BOUND) failures.push(`the heap grew by ${heapGrowth} bytes`);
  if (!(Math.abs(drift) <= DRIFT_BOUND)) failures.push(`the table drifts by ${drift} of its window`);
  const expected = Math.round(axis.time / period);
  if (cycle !== expected) failures.push(`${cycle} cycles in ${axis.time} s, where ${expected} are commanded`);
  const { relativeResidual: residual } = axis.audit;
  return { scene: id, seconds: axis.time, cycles: cycle, heapGrowth, drift, residual, failures };
}

/** Hours of duty twice over: the second time gives the same to the last digit, and leaves nothing behind. */
export function soakLapse(id: string, hours: number): LapseSoak {
  const failures: string[] = [];
  const first = lapseText(id, hours, failures);
  const held = heldMemory();
  if (lapseText(id, hours, failures) !== first) failures.push('a second run gave another result');
  const heapGrowth = heldMemory() - held;
  if (heapGrowth > HEAP_BOUND) failures.push(`the heap grew by ${heapGrowth} bytes`);
  return { scene: id, hours, heapGrowth, failures };
}

function lapseText(id: string, hours: number, failures: string[]): string {
  const lapse = timeLapse(sceneById(id), { hours });
  const { samples, trip } = lapse.asSet;
  const reached = (samples.at(-1)?.time ?? 0) / 3600;
  if (!trip && Math.abs(reached - hours) > 0.1) failures.push(`it ended after ${reached} h`);
  for (const sample of samples) {
    const wrong = Object.entries(sample).find(([, value]) => !Number.isFinite(value));
    if (wrong) failures.push(`${wrong[0]} is ${wrong[1]} at ${sample.time} s`);
  }
  return JSON.stringify(lapse);
}

import type { Scene } from '../../shared/core/scene.ts';
import { cycleDuration } from '../../shared/motion/cycle.ts';
import { Program } from '../command/program.ts';
import { newProgramOutput } from '../command/setpoint.ts';

/** Shortest time to settle, and to measure, s. */
const MIN = 1;
/** Longer cycles take too long to run in full, s. */
const MAX = 300;
/**
 * A cycle of at least this length, s, need not be run twice: after this many seconds of it, loop
 * and air flow no longer depend on how it began. A load that is held takes as long until what the guide carried
 * after the start has passed to the motor.
 */
const LONG = 20;
const FORGOTTEN = 5;

/**
 * Position-loop samples of a run: first to settle, then to measure whole cycles, or one long cycle
 * from the point where the axis has settled to the same point again.
 */
export interface CycleSpan {
  readonly settle: number;
  readonly measure: number;
}

/**
 * How many samples the cycles of a program take, found by stepping through its commands alone: its
 * segments begin at samples. A program without cycles is measured for a second, after the start is forgotten.
 *
 * @throws RangeError when a cycle is too long to be run
 */
export function cycleSpan(scene: Scene): CycleSpan {
  const { parameters: p, moves } = scene;
  const rate = p.currentRate / p.positionDivider;
  const periodic = p.process === 'sine' || p.process === 'pulse';
  const min = Math.round(Math.max(MIN, periodic ? 1 / p.processFrequency : 0) * rate);
  if (cycleDuration(p, moves) === Infinity)
    return { settle: Math.max(Math.round(FORGOTTEN * rate), min), measure: min };
  const program = new Program(p, moves);
  const out = newProgramOutput();
  let [cycle, settle] = [0, 0];
  for (let sample = 0; sample <= 2 * MAX * rate; sample++) {
    program.advance(sample / rate, out);
    if (out.cycle === cycle) continue;
    cycle = out.cycle;
    if (settle === 0 && sample >= min) settle = sample;
    else if (settle > 0 && sample - settle >= min) return shortened(settle, sample - settle, rate);
  }
  throw new RangeError(
    `program: a cycle of the ${p.program} takes longer than ${MAX / 60} minutes, too long to be run over and over. ` +
      'Shorten its moves or its dwell, or leave out what repeats.',
  );
}

function shortened(settle: number, measure: number, rate: number): CycleSpan {
  if (measure < LONG * rate) return { settle, measure };
  const begin = Math.max(settle - measure, 0);
  return { settle: begin + Math.round(FORGOTTEN * rate), measure };
}

/**
 * Runs the program of the parameter table, segment by segment.
 *
 * - Every segment begins at a position-loop sample, so that each cycle is commanded alike, sample
 *   by sample. An oscillation is the exception: each period begins at the exact end of the last
 *   one, which keeps its phase continuous.
 * - New parameters take effect with the next segment; a dwell takes them at once. Another program
 *   begins at the end of the present move, or at once while the setpoint stands still. So no change
 *   makes the setpoint jump.
 * - A cycle begins at `start`. If the setpoint is elsewhere, it is moved there first, under the
 *   limits of the moves.
 */
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { MoveLine } from '../../shared/core/scene.ts';
import { Planner } from '../../shared/motion/planner.ts';
import { PROGRAMS, type ProgramCycle } from '../../shared/motion/programs.ts';
import type { Segment } from '../../shared/motion/segment.ts';
import type { ProgramOutput } from './setpoint.ts';

/** Index of the move to the start of a cycle. */
const APPROACH = -1;

/**
 * Largest number of segments begun at one sample: a program whose segments take no time must not
 * hang the axis.
 */
const MAX_SEGMENTS_PER_SAMPLE = 4;

/**
 * A segment that ends at a sample must end there in every cycle, although the times of the samples
 * are rounded, s. The profile is complete to within rounding so close to its end.
 */
const SLACK = 1e-9;

export class Program {
  readonly #plan: Planner;
  #p: Parameters;
  #changed = false;
  #started = false;
  #kind: Parameters['program'];
  #cycle: ProgramCycle;
  #index = 0;
  #segment: Segment;
  #begin = 0;
  #cycles = 0;
  #segments = 0;
  /** A motion has begun since the last sample. */
  #moved = false;

  constructor(p: Parameters, moves: readonly MoveLine[]) {
    this.#p = p;
    this.#plan = new Planner(moves);
    this.#kind = p.program;
    this.#cycle = PROGRAMS[p.program];
    this.#segment = this.#plan.dwell(0);
  }

  /**
   * Returns to `start`: the first segment begins at the next sample, with the parameters as they
   * are then.
   */
  reset(): void {
    this.#started = false;
  }

  /**
   * Begins the cycle again from standstill at `position` (m) and `time` (s): where the table was
   * left while the drive was off.
   */
  resumeFrom(position: number, time: number): void {
    this.#started = true;
    this.#changed = false;
    this.#begin = time;
    this.#plan.reset(position);
    this.#enterCycle();
    this.#planSegment();
  }

  /** Accepts new parameters without a jump of the setpoint; see above for when they take effect. */
  setParameters(p: Parameters): void {
    this.#p = p;
    this.#changed = true;
  }

  /**
   * The command at `time` (s, never less than at the last call since the reset).
   * @throws RangeError naming the limit if a move begins whose speed, acceleration or jerk limit is
   * not positive.
   */
  advance(time: number, out: ProgramOutput): void {
    if (!this.#started) this.#start(time);
    if (this.#changed) this.#heedChange(time);
    for (let begun = 0; begun < MAX_SEGMENTS_PER_SAMPLE && this.#isOver(time); begun++) {
      this.#beginNext(this.#segment.swingsOn ? this.#begin + this.#segment.duration : time);
    }
    // An oscillation that is still behind has lost more samples than can be caught up with: it
    // continues from here.
    if (this.#isOver(time)) this.#begin = time;

    out.force = 0;
    out.cutting = 0;
    out.frequency = 0;
    out.phase = 0;
    this.#segment.sample(time - this.#begin, out);
    out.moving = this.#moved || this.#segment.moving;
    this.#moved = false;
    out.cycle = this.#cycles;
    out.segment = this.#segments;
  }

  #start(time: number): void {
    this.#cycles = 0;
    this.#segments = 0;
    this.resumeFrom(this.#p.start, time);
  }

  #isOver(time: number): boolean {
    return time - this.#begin >= this.#segment.duration - SLACK;
  }

  /**
   * A standing setpoint can be sent elsewhere at once, and a dwell can be shortened or lengthened.
   */
  #heedChange(time: number): void {
    this.#changed = false;
    if (this.#segment.moving) return;
    if (this.#p.program !== this.#kind) this.#beginNext(time);
    else if (this.#plan.isDwell(this.#segment)) this.#planSegment();
  }

  #beginNext(time: number): void {
    const last = this.#segment;
    this.#begin = time;
    this.#plan.position = last.end;
    this.#segments++;
    this.#index++;
    const cycleIsOver = this.#index >= this.#cycle.length(this.#p, this.#plan);
    if (cycleIsOver) this.#cycles++;

    const hasApproached = this.#index === 0;
    const stands = !last.moving || !last.swingsOn;
    // After the approach as well: the start may have been moved in the meantime.
    if (stands && (cycleIsOver || hasApproached || this.#p.program !== this.#kind)) this.#enterCycle();
    else if (cycleIsOver) this.#index = 0;
    this.#planSegment();
  }

  #enterCycle(): void {
    const plan = this.#plan;
    this.#kind = this.#p.program;
    this.#cycle = PROGRAMS[this.#kind];
    plan.home = this.#cycle.fromStart ? this.#p.start : plan.position;
    this.#index = plan.home === plan.position ? 0 : APPROACH;
  }

  #planSegment(): void {
    const plan = this.#plan;
    this.#segment =
      this.#index === APPROACH
        ? plan.moveTo(plan.home, this.#p)
        : this.#cycle.segment(this.#index, this.#p, plan);
    this.#moved ||= this.#segment.moving;
  }
}

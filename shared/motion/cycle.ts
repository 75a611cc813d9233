/** What can be said of one cycle of a program before it is run, read from the programs that the simulation runs. */
import type { MoveLine, Scene } from '../core/scene.ts';
import { Planner } from './planner.ts';
import { PROGRAMS, type ProgramParameters } from './programs.ts';
import type { Segment } from './segment.ts';
import { newSegmentCommand } from './setpoint.ts';

/** A segment in its cycle. */
export interface CycleSegment {
  /** From the start of the cycle, s. */
  readonly begin: number;
  /** Where the setpoint stands at its start, m. */
  readonly from: number;
  /** Valid until the next segment is asked for. */
  readonly segment: Segment;
}

/** A move of a cycle, with the standstill after it: m, s. */
export interface CycleMove {
  readonly from: number;
  readonly to: number;
  readonly begin: number;
  readonly time: number;
  readonly dwell: number;
  /** Force of the process against this move alone, N. */
  readonly cutting: number;
}

/** The segments of one cycle as it is repeated: a list begins where it ends, a sine swings at its full amplitude. */
export function* cycleSegments(
  p: ProgramParameters,
  moves: readonly MoveLine[],
): Generator<CycleSegment, void, void> {
  const cycle = PROGRAMS[p.program];
  const plan = new Planner(moves);
  plan.reset(p.start);
  const count = cycle.length(p, plan);
  // The first cycle leads to what is repeated.
  for (let index = 0; index < count; index++) plan.position = cycle.segment(index, p, plan).end;
  let begin = 0;
  for (let index = 0; index < count; index++) {
    const segment = cycle.segment(index, p, plan);
    yield { begin, from: plan.position, segment };
    begin += segment.duration;
    plan.position = segment.end;
  }
}

/** How long one cycle takes, s; Infinity where the setpoint stands still for good. */
export function cycleDuration(p: ProgramParameters, moves: readonly MoveLine[]): number {
  let time = 0;
  for (const { segment } of cycleSegments(p, moves)) time += segment.duration;
  return time;
}

/** How long a scene takes until it repeats itself, s; null present position still. */
export function cycleTime({ parameters: p, moves }: Scene): number | null {
  const time = cycleDuration(p, moves);
  return p.drive === 'on' && Number.isFinite(time) ? time : null;
}

/** The moves of one cycle; none where the program only stands. */
export function cycleMoves(p: ProgramParameters, moves: readonly MoveLine[]): CycleMove[] {
  const found: CycleMove[] = [];
  const now = newSegmentCommand();
  for (const { begin, from, segment } of cycleSegments(p, moves)) {
    const { moving, duration, end } = segment;
    const last = found.pop();
    if (last) found.push(moving ? last : { ...last, dwell: last.dwell + duration });
    if (!moving) continue;
    segment.sample(0, now);
    found.push({ from, to: end, begin, time: duration, dwell: 0, cutting: now.cutting });
  }
  return found;
}

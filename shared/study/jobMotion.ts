/** The motion that a job asks for, before any drive has a say. */
import { defaultParameters, type ParameterChanges } from '../core/parameters/table.ts';
import type { MoveLine } from '../core/scene.ts';
import { type CycleMove, cycleMoves } from '../motion/cycle.ts';
import { moveLimits } from '../motion/moveLimits.ts';
import type { MoveLimits } from '../motion/profile.ts';
import type { ProgramParameters } from '../motion/programs.ts';
import type { Job } from './job.ts';

/** Limits of the moves of a job, of a list the highest; null for an empty list. */
export function motionLimits({ values, moves }: Job): MoveLimits | null {
  if (values.motion === 'back and forth') return moveLimits(values.stroke, values.moveTime);
  if (moves.length === 0) return null;
  const max = (name: keyof MoveLimits) => Math.max(...moves.map((line) => line[name]));
  return { speed: max('speed'), acceleration: max('acceleration'), jerk: max('jerk') };
}

/** The program that does a job. */
export function jobProgram(job: Job): ParameterChanges & Partial<ProgramParameters> {
  const { motion, stroke, dwell } = job.values;
  const isList = motion === 'move list';
  return {
    program: isList ? 'list' : 'shuttle',
    // A list begins where it ends, so that every round is alike.
    start: isList ? (job.moves.at(-1)?.to ?? 0) : -stroke / 2,
    stroke,
    dwell,
    ...motionLimits(job),
  };
}

const DEFAULTS = defaultParameters();

/** The same with everything else that a program may be made of, as `cycleSegments` reads it. */
export function programOf(job: Job): ProgramParameters {
  return { ...DEFAULTS, ...jobProgram(job) };
}

/** The moves of one cycle; it is repeated over and over, and begins where it ends. */
export function movesAsked(job: Job): CycleMove[] {
  return cycleMoves(programOf(job), job.moves);
}

/** The moves of one cycle as lines of a list, whichever way they are asked for. */
export function linesOf(job: Job): readonly MoveLine[] {
  const limits = motionLimits(job);
  if (job.values.motion === 'move list' || limits === null) return job.moves;
  return movesAsked(job).map(({ to, dwell }) => ({ to, ...limits, dwell }));
}

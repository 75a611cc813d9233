import type { ParameterChanges, ParameterName, Parameters } from './parameters/table.ts';

/** Following error in the repeats that a force was learned from. */
interface LearningCourse {
  /** Of each repeat, the first without anything learned, m. */
  readonly peaks: readonly number[];
  readonly rms: readonly number[];
  /** Over the cycle before and after, m. */
  readonly before: Float64Array;
  readonly after: Float64Array;
  /** Largest |Q (1 − L G)| over frequency, and where it is, Hz. */
  readonly worstRate: number;
  readonly worstFrequency: number;
  /** Bandwidth of Q, Hz. */
  readonly bandwidth: number;
}

/** Force over the time of one cycle of a repeated program, as it was learned from its following error. Not kept in files or links. */
export interface LearnedMove {
  /** One for each sample of the position loop, from the start of the cycle, N. */
  readonly forces: Float64Array;
  /** The move it was learned on: it acts on no other. */
  readonly move: ParameterChanges;
  /** What the repeats came to; without it the force is still being learned. */
  readonly course?: LearningCourse;
}

const MOVE_NAMES = [
  'program',
  'start',
  'stroke',
  'speed',
  'scanSpeed',
  'acceleration',
  'jerk',
  'dwell',
  'jerkRamp',
  'shaper',
  'shaperFrequency',
  'shaperDamping',
  'setpointFilter',
  'currentRate',
  'positionDivider',
] as const satisfies readonly ParameterName[];

export function moveLearned(p: Parameters): ParameterChanges {
  return Object.fromEntries(MOVE_NAMES.map((name) => [name, p[name]]));
}

/** Whether the program still makes the move that was learned. */
export function makesLearnedMove({ move }: LearnedMove, p: Parameters): boolean {
  return MOVE_NAMES.every((name) => move[name] === p[name]);
}

import type { LearnedMove } from '../core/learnedMove.ts';
import type { Scene } from '../core/scene.ts';
import type { Trip } from './axis.ts';

/** A force that was learned for the move of a scene, or why there is none. */
export type LearningOutcome =
  | { readonly learned: Required<LearnedMove> }
  | { readonly trip: Trip }
  | { readonly refused: string };

/** The commands of the learning worker. */
export interface LearnMoveCommands {
  /** Repeats the move of the scene on a copy of the machine. */
  learn(scene: Scene): LearningOutcome;
}

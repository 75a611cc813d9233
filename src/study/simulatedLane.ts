import type { JudgedLane } from '../../shared/study/verdict.ts';
import type { LaneState } from './state.ts';

/** A lane with its outcome. */
export type SimulatedLane = LaneState & JudgedLane;

export function isSimulated(lane: LaneState): lane is SimulatedLane {
  return lane.outcome !== null;
}

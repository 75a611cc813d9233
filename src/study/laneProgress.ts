import { inUnit } from '../../shared/format.ts';
import type { LaneState } from './state.ts';

/** How far a lane is, 0 to 1: tuning and simulating count as a half each. */
export function laneShare({ outcome, progress, choice }: LaneState): number {
  if (outcome) return 1;
  const half = choice.gains ? 0.5 : 0;
  return half + (progress ? progress.share / 2 : 0);
}

/** How far a lane without an outcome is, or why it has none: 'B: Positioning, cold, 45 %.' */
export function laneWords({ letter, progress, trouble }: LaneState, isRunning: boolean): string {
  if (progress) return `${letter}: ${progress.stage}, ${inUnit(progress.share, '%', 2)}.`;
  if (trouble !== null) return `${letter}: ${trouble}`;
  return `${letter}: ${isRunning ? 'its turn comes' : 'not simulated yet'}.`;
}

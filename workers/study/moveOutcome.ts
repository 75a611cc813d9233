import type { Scene } from '../../shared/core/scene.ts';
import type { MoveFigures } from '../../shared/protocol/axis.ts';
import type { MoveOutcome } from '../../shared/study/outcome.ts';
import { measureTrial } from '../run/measureRun.ts';
import { cycleSpan } from '../timelapse/cycleSpan.ts';

/**
 * Outcome of the moves of at least two whole cycles, or of one long one, starting cold. The first
 * move begins as the drive is switched on with a load on it, and so asks for a jump of current as
 * no later move does: its peaks do not count beside those of a second cycle.
 */
export function moveOutcome(scene: Scene): MoveOutcome {
  const { positionDivider, currentRate } = scene.parameters;
  const { settle, measure } = cycleSpan(scene);
  const isLong = settle < measure;
  const samples = isLong ? measure : settle + measure;
  const run = measureTrial(scene, (samples * positionDivider) / currentRate);
  const counted = isLong ? run.moves : run.moves.slice(1);
  const largest = (of: (move: MoveFigures) => number, untilTrip: number) =>
    run.trip ? untilTrip : Math.max(...counted.map(of));
  return {
    trip: run.trip,
    settlingTime: run.settlingTime,
    peakError: largest(({ peakError }) => peakError, run.peakFollowingError),
    rmsError: largest(({ rmsError }) => rmsError, run.rmsFollowingError),
    peakForce: largest(({ peakForce }) => peakForce, run.peakForce),
    rmsForce: run.rmsForce,
    peakCurrent: largest(({ peakCurrent }) => peakCurrent, run.peakCurrent),
    rmsCurrent: run.rmsCurrent,
    currentHeadroom: 1 - largest(({ currentHeadroom }) => 1 - currentHeadroom, 1 - run.currentHeadroom),
    // A vector shortened to the limit may exceed it by rounding.
    voltageHeadroom: Math.max(
      1 - largest(({ voltageHeadroom }) => 1 - voltageHeadroom, 1 - run.voltageHeadroom),
      0,
    ),
    moves: run.moves,
  };
}

import { continuousForce } from '../axis/motor.ts';
import { ranged } from '../core/format.ts';
import type { Parameters } from '../core/parameters/table.ts';

/** What a run drew: RMS and largest amplitude of the current, A, and RMS force of all motors, N. */
interface RunLoad {
  readonly rmsCurrent: number;
  readonly peakCurrent: number;
  readonly rmsForce: number;
}

/** Shares of the limits. */
export function loadShares(p: Parameters, { rmsCurrent, peakCurrent, rmsForce }: RunLoad) {
  return {
    current: rmsCurrent / p.continuousCurrent,
    force: rmsForce / continuousForce(p),
    peak: peakCurrent / p.peakCurrent,
  };
}

/** Why a duty that repeats this run cannot go on, one sentence each; none where it can. */
export function loadWarnings(p: Parameters, load: RunLoad): string[] {
  const { current, force, peak } = loadShares(p, load);
  const warnings: string[] = [];
  if (current > 1)
    warnings.push(
      `The RMS current of this run, ${ranged(load.rmsCurrent, 'A')}, is above the continuous current of the amplifier, ${ranged(p.continuousCurrent, 'A')}. If the move repeats like this, the drive will fold back its current and trip. Lower acceleration, lengthen the dwell or choose a larger amplifier.`,
    );
  if (force > 1)
    warnings.push(
      `The RMS force of this run, ${ranged(load.rmsForce, 'N')}, is above the continuous force of the motor, ${ranged(continuousForce(p), 'N')}. If the move repeats like this, the winding will overheat. Lower acceleration, lengthen the dwell or choose a larger motor.`,
    );
  if (peak >= 1)
    warnings.push(
      `The current reaches its limit, ${ranged(p.peakCurrent, 'A')}: the move asks for more than the amplifier gives, and the following error grows meanwhile.`,
    );
  return warnings;
}

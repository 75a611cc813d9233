import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { tripText } from '../../shared/figures/tripText.ts';
import type { Axis } from '../run/axis.ts';
import { tripOf } from '../run/tripOf.ts';

/** What a measurement of the loop records at each position-loop sample. Forces in N. */
export interface LoopSample {
  /**
   * Of the force sweep: cycle and segment of the program, Hz, rad; frequency 0 while no force is
   * added.
   */
  readonly cycle: number;
  readonly segment: number;
  readonly frequency: number;
  readonly phase: number;
  /** Added at the loop output. */
  readonly added: number;
  /** Force that is asked of the motor: the loop's own and the added one. */
  readonly total: number;
}

/**
 * Runs the program of the axis, sample by sample, for as long as `take` returns true.
 *
 * @returns the message of the trip that ended it early, or null
 */
export function runLoop(axis: Axis, take: (sample: LoopSample) => boolean): string | null {
  for (;;) {
    const samples = axis.atPositionSample;
    if (!axis.step()) return tripText(tripOf(axis), 'metric');
    if (!samples) continue;
    const { cycle, segment, frequency, phase, force } = axis.command;
    const total = valueAt(axis.record, C.currentCommand) * axis.forcePerAmp;
    if (!take({ cycle, segment, frequency, phase, added: force, total })) return null;
  }
}

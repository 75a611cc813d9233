import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';

/** Movements below this do not show, m. */
const GRAIN = 5e-6;
const POSES = [C.tablePosition, C.motorPosition, C.setpoint, C.basePosition] as const;

/** The pose a machine was last drawn in. */
export class Posed {
  readonly #places = new Float64Array(POSES.length).fill(Number.NaN);

  /** Whether the machine would look different with these values, in the order of CHANNELS. */
  differsFrom(now: Float64Array): boolean {
    return POSES.some((channel, i) => !(Math.abs(valueAt(now, channel) - valueAt(this.#places, i)) < GRAIN));
  }

  take(now: Float64Array): void {
    POSES.forEach((channel, i) => {
      this.#places[i] = valueAt(now, channel);
    });
  }

  forget(): void {
    this.#places.fill(Number.NaN);
  }
}

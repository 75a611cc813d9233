import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_COUNT, CHANNEL_INDEX, type ChannelName } from '../../shared/core/channels.ts';
import type { Frame } from '../../shared/protocol/axis.ts';

/** Slow motion is this share of the pace that was set. */
const SHARE = 1 / 20;

/**
 * The command is about to arrive when its speed over its deceleration is less than this, s. While the deceleration fades
 * out at constant jerk, v = j t²/2 and a = j t, so that half of the time left is told.
 */
const BEFORE_ARRIVAL = 0.03;

/** How long the settling is watched once the command stands still, s. */
const SETTLING = 0.05;

/** A trip is near when this share of the permitted following error is reached. */
const NEAR_TRIP = 0.5;

/** What a frame is read for. */
type Seen = Pick<Frame, 'bins' | 'count'> & { readonly status: Pick<Frame['status'], 'time' | 'timeScale'> };

/**
 * Slows the run down just before the command arrives or the following error trips the drive, and gives the pace back
 * afterwards. Whoever sets another pace meanwhile keeps it.
 */
export class SlowMotion {
  #isOn = false;
  /** The pace to give back, and the slow one; null: not slowed. */
  #slowed: { readonly from: number; readonly to: number } | null = null;
  /** When the command began to stand still, s; null while it moves. */
  #stillSince: number | null = null;
  #hasMoved = false;

  get isOn(): boolean {
    return this.#isOn;
  }

  /** Returns the pace to set, or null. */
  toggle(): number | null {
    this.#isOn = !this.#isOn;
    const from = this.#slowed?.from ?? null;
    this.#slowed = null;
    this.#hasMoved = false;
    return this.#isOn ? null : from;
  }

  /** Takes in a frame of a run whose following error may be `limit`, m. Returns the pace to set, or null where it stays. */
  take({ bins, count, status: { time, timeScale } }: Seen, limit: number): number | null {
    if (!this.#isOn || count === 0) return null;
    const isSlow = this.#isNear(bins, count, time, limit);
    if (this.#slowed) {
      const { from, to } = this.#slowed;
      const isOurs = timeScale === to;
      if (isSlow && (isOurs || timeScale === from)) return null;
      this.#slowed = null;
      return isOurs ? from : null;
    }
    if (!isSlow || !Number.isFinite(timeScale)) return null;
    this.#slowed = { from: timeScale, to: timeScale * SHARE };
    return this.#slowed.to;
  }

  #isNear(bins: Float64Array, count: number, time: number, limit: number): boolean {
    const last = (count - 1) * 2 * CHANNEL_COUNT;
    const highest = (channel: ChannelName) => valueAt(bins, last + 2 * CHANNEL_INDEX[channel] + 1);
    const lowest = (channel: ChannelName) => valueAt(bins, last + 2 * CHANNEL_INDEX[channel]);
    const [speed, acceleration] = [highest('setSpeed'), highest('setAcceleration')];
    const error = Math.max(highest('followingError'), -lowest('followingError'));
    if (speed !== 0) {
      this.#hasMoved = true;
      this.#stillSince = null;
    } else if (this.#hasMoved) this.#stillSince ??= time;
    const isArriving = speed * acceleration < 0 && Math.abs(speed) < BEFORE_ARRIVAL * Math.abs(acceleration);
    const isSettling =
      this.#stillSince !== null && time - this.#stillSince < SETTLING && time >= this.#stillSince;
    return isArriving || isSettling || error > NEAR_TRIP * limit;
  }
}

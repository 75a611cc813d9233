import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Trip } from '../../shared/protocol/axis.ts';

/** What the guards of a drive see at a position-loop sample; m, m/s, °C. One object is filled again and again. */
interface Watched {
  time: number;
  error: number;
  position: number;
  speed: number;
  winding: number;
  /** As found by the oscillation watch: Hz; 0 while nothing rings. */
  ringing: number;
  /** A hand has hold of the table. */
  pulled: boolean;
}

/** What makes a drive stop itself, checked at each position-loop sample. */
export class Guards {
  readonly watched: Watched = {
    time: 0,
    error: 0,
    position: 0,
    speed: 0,
    winding: 0,
    ringing: 0,
    pulled: false,
  };
  #isOn = false;
  #winding = 0;
  #error = 0;
  #lower = 0;
  #upper = 0;
  #speed = 0;

  constructor(p: Parameters) {
    this.configure(p);
  }

  configure(p: Parameters): void {
    this.#isOn = p.drive === 'on';
    this.#winding = p.windingLimit;
    this.#error = p.followingErrorLimit;
    this.#lower = p.travelMin;
    this.#upper = p.travelMax;
    this.#speed = p.speedLimit;
  }

  /** The first reason found in what is watched, or null. */
  check(): Trip | null {
    const { time, error, position, speed, winding, ringing, pulled } = this.watched;
    if (winding >= this.#winding) return overTemperature(this.#winding, time);
    if (!this.#isOn) return null;
    if (Math.abs(error) > this.#error) return { kind: 'following error', time, limit: this.#error, pulled };
    if (position < this.#lower) return { kind: 'over-travel', time, side: 'lower', limit: this.#lower };
    if (position > this.#upper) return { kind: 'over-travel', time, side: 'upper', limit: this.#upper };
    if (Math.abs(speed) > this.#speed) return { kind: 'over-speed', time, limit: this.#speed };
    return ringing > 0 ? { kind: 'oscillation', time, frequency: ringing } : null;
  }
}

/** The state is no longer finite: whatever the loop did, it can no longer be computed. */
export function divergence({ drive }: Parameters, time: number): Trip {
  return drive === 'on' ? { kind: 'divergence', time } : { kind: 'divergence', time, undriven: true };
}

/** `limit` in °C. */
export function overTemperature(limit: number, time: number): Trip {
  return { kind: 'over-temperature', time, limit };
}

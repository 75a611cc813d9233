import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Trip } from '../../shared/protocol/axis.ts';

/** What the drive and its guards see at a position-loop sample; m, m/s, °C. */
interface Watched {
  readonly error: number;
  readonly position: number;
  readonly speed: number;
  readonly winding: number;
  /** As found by the oscillation watch: Hz, or null. */
  readonly ringing: number | null;
  /** A hand has hold of the table. */
  readonly pulled: boolean;
}

/**
 * What makes a drive stop itself, checked at each position-loop sample.
 * @returns the first reason found, or null
 */
export function checkTrips(p: Parameters, time: number, watched: Watched): Trip | null {
  const { error, position, speed, winding, ringing, pulled } = watched;
  if (winding >= p.windingLimit) return overTemperature(p, time);
  if (p.drive !== 'on') return null;
  if (Math.abs(error) > p.followingErrorLimit)
    return { kind: 'following error', time, limit: p.followingErrorLimit, pulled };
  if (position < p.travelMin) return { kind: 'over-travel', time, side: 'lower', limit: p.travelMin };
  if (position > p.travelMax) return { kind: 'over-travel', time, side: 'upper', limit: p.travelMax };
  if (Math.abs(speed) > p.speedLimit) return { kind: 'over-speed', time, limit: p.speedLimit };
  return ringing === null ? null : { kind: 'oscillation', time, frequency: ringing };
}

/** The state is no longer finite: whatever the loop did, it can no longer be computed. */
export function divergence({ drive }: Parameters, time: number): Trip {
  return drive === 'on' ? { kind: 'divergence', time } : { kind: 'divergence', time, undriven: true };
}

export function overTemperature(p: Parameters, time: number): Trip {
  return { kind: 'over-temperature', time, limit: p.windingLimit };
}

import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Trip } from '../../shared/protocol/axis.ts';

/**
 * What makes a drive stop itself, checked at each position-loop sample. Positions in m, speed in m/s, temperature in °C.
 * `swinging` as found by the oscillation watch.
 * @returns the first reason found, or null
 */
export function checkTrips(
  p: Parameters,
  time: number,
  error: number,
  position: number,
  speed: number,
  windingTemperature: number,
  swinging: boolean,
): Trip | null {
  if (windingTemperature >= p.windingLimit) return overTemperature(p, time);
  if (p.drive !== 'on') return null;
  if (Math.abs(error) > p.followingErrorLimit)
    return { kind: 'following error', time, limit: p.followingErrorLimit };
  if (position < p.travelMin) return { kind: 'over-travel', time, side: 'lower', limit: p.travelMin };
  if (position > p.travelMax) return { kind: 'over-travel', time, side: 'upper', limit: p.travelMax };
  if (Math.abs(speed) > p.speedLimit) return { kind: 'over-speed', time, limit: p.speedLimit };
  return swinging ? { kind: 'oscillation', time } : null;
}

/** The state is no longer finite: whatever the loop did, it can no longer be computed. */
export function divergence(time: number): Trip {
  return { kind: 'divergence', time };
}

export function overTemperature(p: Parameters, time: number): Trip {
  return { kind: 'over-temperature', time, limit: p.windingLimit };
}

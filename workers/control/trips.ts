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
  if (Math.abs(error) > p.followingErrorLimit) {
    return {
      kind: 'following error',
      time,
      message: `The following error passed ${(p.followingErrorLimit * 1e3).toPrecision(3)} mm. The loop is unstable or too soft, or the move asks for more than the current limit allows.`,
    };
  }
  if (position < p.travelMin || position > p.travelMax) {
    const [side, limit] = position < p.travelMin ? ['lower', p.travelMin] : ['upper', p.travelMax];
    return {
      kind: 'over-travel',
      time,
      message: `The table passed the ${side} travel limit at ${(limit * 1e3).toFixed(1)} mm.`,
    };
  }
  if (Math.abs(speed) > p.speedLimit) {
    return {
      kind: 'over-speed',
      time,
      message: `The table passed the speed limit of ${p.speedLimit.toPrecision(3)} m/s.`,
    };
  }
  if (swinging) {
    return {
      kind: 'oscillation',
      time,
      message:
        'The drive swung from one limit of current or voltage to the other again and again: the loop is unstable.',
    };
  }
  return null;
}

export function overTemperature(p: Parameters, time: number): Trip {
  return {
    kind: 'over-temperature',
    time,
    message: `The winding reached its limit of ${p.windingLimit.toFixed(0)} °C. Give it a gentler cycle, a longer dwell or cooling.`,
  };
}

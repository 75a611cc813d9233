import type { Setpoint } from '../motion/setpoint.ts';
import type { CandidateFacts } from './facts.ts';

/** Of a motor force at a setpoint what the inertia of the screw takes, the drag of nut and bearings, and what the nut passes on, N. */
export function nutThrust(
  { p, loads }: Pick<CandidateFacts, 'p' | 'loads'>,
  force: number,
  { speed, acceleration }: Pick<Setpoint, 'speed' | 'acceleration'>,
  direction: number,
) {
  const inertia = (loads.mass - loads.travellingMass) * acceleration;
  const drag = direction * p.nutDrag + p.nutViscous * speed;
  return { inertia, drag, thrust: force - inertia - drag };
}

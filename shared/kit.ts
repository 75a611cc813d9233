import type { ParameterChanges } from './parameters/table.ts';
import type { Kit } from './scene.ts';

/** What adds up when motors work in parallel: ratings, heat paths, and the mountings that hold them to the table. */
const PER_MOTOR = [
  'peakCurrent',
  'continuousCurrent',
  'windingCapacity',
  'carrierCapacity',
  'windingToCarrier',
  'carrierToAir',
  'carrierToTable',
  'linkStiffness',
  'linkDamping',
] as const;

/** Parameters of an axis with `motorCount` motors of this drive. A kit itself states them for one motor. */
export function kitParameters(kit: Kit, motorCount: number): ParameterChanges {
  const changes: ParameterChanges = { ...kit.parameters };
  for (const name of PER_MOTOR) {
    const single = changes[name];
    if (single !== undefined) changes[name] = motorCount * single;
  }
  return changes;
}

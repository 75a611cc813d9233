import { type Failure, failure } from './jsonFile.ts';
import { PARAMETERS, type ParameterChanges } from './parameters/table.ts';
import { didYouMean, shown } from './problem.ts';
import type { Kit } from './scene.ts';

/** The kit with this id; anything may come in. */
export function findKit(id: unknown, kits: Readonly<Record<string, Kit>>): Kit | Failure {
  if (typeof id === 'string' && Object.hasOwn(kits, id)) return kits[id]!;
  const known = Object.keys(kits);
  const meant = typeof id === 'string' ? didYouMean(id, known) : '';
  return failure('kit', id, `kit: ${shown(id)} is not one of ${known.join(', ')}.${meant}`);
}

/** Motors of a drive that may work in parallel: two do not share a screw. */
export function mostMotors({ form }: Kit): number {
  return form === 'screw' ? 1 : PARAMETERS.motorCount.max;
}

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

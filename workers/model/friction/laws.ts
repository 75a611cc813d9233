import { hasDryFriction } from '../../../shared/axis/guide.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { BristleFriction } from './bristles.ts';
import type { FrictionLaw } from './law.ts';
import { ViscousFriction } from './viscous.ts';

/** Every law of friction that a guide can have, by the name under which parameters choose it. */
export const FRICTION_LAWS = {
  bristles: () => new BristleFriction(),
  viscous: () => new ViscousFriction(),
} as const satisfies Record<string, () => FrictionLaw>;

type FrictionLawName = keyof typeof FRICTION_LAWS;

/** Without dry friction nothing yields before the guide slides. */
export function frictionLawOf(p: Parameters): FrictionLawName {
  return hasDryFriction(p) ? 'bristles' : 'viscous';
}

import { parameterNamed as named } from '../core/parameters/labels.ts';
import type { Parameters } from '../core/parameters/table.ts';
import { approx, type Sentence, sentence } from '../core/sentence.ts';
import { dryMotorDrag } from './drag.ts';
import { breakawayForce, slidingFriction } from './guide.ts';

/** Share by which the compensation may exceed the friction of the machine: it is not known better. */
const OVERCOMPENSATION_TOLERANCE = 0.05;

type Compensation = Pick<
  Parameters,
  'coulombCompensation' | 'breakawayCompensation' | 'breakawaySpeed' | 'compensationSpeed'
>;

/** Whether the controller compensates friction. */
export function compensatesFriction(p: Compensation): boolean {
  return p.coulombCompensation > 0 || p.breakawayCompensation > 0;
}

/**
 * Force of the friction compensation at a commanded speed v (m/s), N:
 *
 *   F = (F_cc + F_bc exp(−(v/v_bc)²)) tanh(v/v_cc)
 *
 * Coulomb friction with the Stribeck curve of the LuGre model (Canudas de Wit et al. 1995) on top; tanh in place of the sign keeps
 * the force from jumping at a reversal (common practice, no source).
 */
export class FrictionCompensation {
  readonly #coulomb: number = 0;
  readonly #breakaway: number = 0;
  readonly #breakawaySpeed: number = 0;
  readonly #speed: number = 0;

  constructor(p: Compensation) {
    this.#coulomb = p.coulombCompensation;
    this.#breakaway = p.breakawayCompensation;
    this.#breakawaySpeed = p.breakawaySpeed;
    this.#speed = p.compensationSpeed;
  }

  force(v: number): number {
    const low = v / this.#breakawaySpeed;
    return (this.#coulomb + this.#breakaway * Math.exp(-low * low)) * Math.tanh(v / this.#speed);
  }
}

/**
 * Whether the friction compensation is above the dry friction of guide, nut and iron. It follows the commanded speed, so it lies
 * outside the loop and cannot make it unstable; one that follows the measured speed would make the axis hunt.
 */
export function overcompensationWarning(p: Parameters): Sentence | null {
  const drag = dryMotorDrag(p);
  const sliding = slidingFriction(p) + drag;
  if (p.coulombCompensation > sliding * (1 + OVERCOMPENSATION_TOLERANCE)) {
    return sentence`${named('coulombCompensation')} (${approx(p.coulombCompensation, 'N')}) is above the dry friction of the
      axis, ${approx(sliding, 'N')}: it pushes too far at each reversal. In a drive that takes the sign from the measured speed
      it causes a limit cycle. Lower it to ${approx(sliding, 'N')} or less.`;
  }
  const boosted = p.coulombCompensation + p.breakawayCompensation;
  const breakaway = Math.max(breakawayForce(p), slidingFriction(p)) + drag;
  if (p.breakawayCompensation === 0 || boosted <= breakaway * (1 + OVERCOMPENSATION_TOLERANCE)) return null;
  return sentence`${named('coulombCompensation')} and ${named('breakawayCompensation')} together
    (${approx(boosted, 'N')}) are above the breakaway force of the axis, ${approx(breakaway, 'N')}: they push too far at each
    reversal. Lower ${named('breakawayCompensation')}.`;
}

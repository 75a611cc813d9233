import { type FeedbackWeights, feedbackWeights } from '../../shared/axis/loop/feedback.ts';
import { designFilter, filtersOn } from '../../shared/axis/loop/filterSections.ts';
import { motorConstants } from '../../shared/axis/motor.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { Biquad } from '../control/biquad.ts';
import { observerWeight } from '../control/disturbanceObserver.ts';
import { type Complex, minus, ONE, over, plus, real, scaled, times, ZERO } from '../math/complex.ts';

/** −i* over the two readings of a loop, A/m: of the position encoder and of the one that the speed is measured from. */
interface FeedbackResponse {
  readonly position: Complex;
  readonly speed: Complex;
}

/** What all feedback of these parameters is made of, whatever its weights. */
interface FeedbackParts {
  /** −i* over the two readings for a unit of the weights a and c. */
  readonly position: Complex;
  readonly speed: Complex;
  /** What the observer adds to c, and J, by which the weights b and d count. */
  readonly inertia: Complex;
  readonly sum: Complex;
}

/*
 * The position loop of control/positionLoop.ts in z, at z = exp(jωTp), with the same biquads. With the weights a, b, c, d of
 * shared/axis/loop/feedback.ts, J = Tp/(1 − z⁻¹) for a sum, and H for the filter on the velocity command:
 *
 *   F  = H (a + b J) (x_set − x_m) + (c + d J) (H w v_set exp(−jωT_sd) − v̂) + K_vff v_set + K_aff a_set + d̂
 *   v̂  = (a_f/Tp)(1 − z⁻¹)/(1 − (1 − a_f) z⁻¹) x_s,   a_f = Tp/(T_f + Tp)
 *   d̂  = Q (z⁻¹ (F' − K_vff v_set) − (M_o/Tp)(1 − z⁻¹) v̂),   Q = a_o/(1 − (1 − a_o) z⁻¹)
 *   F' = filter4 filter3 filter2 filter1 F = N F,   i* = F'/K_f,pk
 *
 * The observer feeds F' back to itself, so that everything is divided by 1 − N Q z⁻¹.
 */
export class PositionController {
  readonly period: number;
  /** The filters that are switched on, in order. */
  readonly filters: readonly Biquad[];
  readonly perForce: number;
  /** Weight of a new difference in the speed estimate. */
  readonly speedWeight: number;
  readonly weights: FeedbackWeights;

  readonly #p: Parameters;

  /** @param weights of the feedback, those of the parameters unless given */
  constructor(p: Parameters, weights = feedbackWeights(p)) {
    this.#p = p;
    this.weights = weights;
    const rate = p.currentRate / p.positionDivider;
    this.period = 1 / rate;
    this.perForce = 1 / motorConstants(p).forcePerAmp;
    this.speedWeight = this.period / (p.derivativeTime + this.period);
    this.filters = filtersOf(p, rate);
  }

  /** Weight of a new value in the filter on the velocity command of a cascade; 1 without. */
  get commandWeight(): number {
    const { controller, velocityCommandFilter } = this.#p;
    return controller === 'cascade' ? this.period / (velocityCommandFilter + this.period) : 1;
  }

  /** The disturbance observer: weight of its filter, and N per m/s of change in a sample; null while it is off. */
  get observer(): { readonly weight: number; readonly massPerPeriod: number } | null {
    const p = this.#p;
    if (!p.observer) return null;
    return { weight: observerWeight(p, this.period), massPerPeriod: p.observerMass / this.period };
  }

  feedback(z: Complex): FeedbackResponse {
    const { error, errorIntegral } = this.weights;
    const { position, speed, inertia } = this.parts(z);
    return {
      position: times(position, this.#summed(z, error, errorIntegral)),
      speed: times(speed, plus(this.#speedGain(z), inertia)),
    };
  }

  parts(z: Complex): FeedbackParts {
    const difference = oneMinusInverse(z);
    const shaping = this.#shaping(z);
    const { speedWeight, period, observer } = this;
    const estimate = lag(z, scaled(difference, speedWeight / period), speedWeight);
    const inertia = observer
      ? lag(z, scaled(difference, observer.weight * observer.massPerPeriod), observer.weight)
      : ZERO;
    return {
      position: times(shaping, this.#commandFilter(z)),
      speed: times(shaping, estimate),
      inertia,
      sum: over(real(period), difference),
    };
  }

  /** i* over a sine setpoint of angular frequency ω with its own speed and acceleration, A/m. */
  feedforward(z: Complex, omega: number): Complex {
    const p = this.#p;
    const { error, errorIntegral } = this.weights;
    const share = p.controller === 'cascade' ? p.velocityFeedforward : 1;
    const turn = omega * p.setSpeedDelay;
    const delayed = { re: share * omega * Math.sin(turn), im: share * omega * Math.cos(turn) };
    const commanded = plus(this.#summed(z, error, errorIntegral), times(this.#speedGain(z), delayed));
    const drag = times({ re: 0, im: p.speedFeedforward * omega }, minus(ONE, this.#seenBefore(z)));
    const motion = plus(real(-p.accelerationFeedforward * omega * omega), drag);
    return times(this.#shaping(z), plus(times(this.#commandFilter(z), commanded), motion));
  }

  #speedGain(z: Complex): Complex {
    return this.#summed(z, this.weights.speed, this.weights.speedIntegral);
  }

  /** A proportional part and the sum over all samples. */
  #summed(z: Complex, proportional: number, integral: number): Complex {
    if (integral === 0) return real(proportional);
    return plus(real(proportional), over(real(integral * this.period), oneMinusInverse(z)));
  }

  #commandFilter(z: Complex): Complex {
    const weight = this.commandWeight;
    return weight === 1 ? ONE : lag(z, real(weight), weight);
  }

  /** Filters, what the observer makes of them, and current per force. */
  #shaping(z: Complex): Complex {
    const filtered = this.filters.reduce(
      (product, filter) => times(product, biquadResponse(filter, z)),
      real(this.perForce),
    );
    if (this.observer === null) return filtered;
    return over(filtered, minus(ONE, times(scaled(filtered, 1 / this.perForce), this.#seenBefore(z))));
  }

  /** Q z⁻¹: what the observer makes of a force; nothing while it is off. */
  #seenBefore(z: Complex): Complex {
    const { observer } = this;
    return observer ? over(lag(z, real(observer.weight), observer.weight), z) : ZERO;
  }
}

/** H(z) of a second-order section. */
export function biquadResponse({ b0, b1, b2, a1, a2 }: Biquad, z: Complex): Complex {
  const square = times(z, z);
  const polynomial = (c0: number, c1: number, c2: number) =>
    plus(plus(scaled(square, c0), scaled(z, c1)), real(c2));
  return over(polynomial(b0, b1, b2), polynomial(1, a1, a2));
}

/** What a filter y⁺ = y + weight (x − y) makes of an input, given as weight · x. */
function lag(z: Complex, weighted: Complex, weight: number): Complex {
  return over(weighted, plus(ONE, scaled(over(ONE, z), weight - 1)));
}

function oneMinusInverse(z: Complex): Complex {
  return minus(ONE, over(ONE, z));
}

function filtersOf(p: Parameters, rate: number): Biquad[] {
  return filtersOn(p).map((n) => {
    const filter = new Biquad();
    designFilter(filter, p, n, rate);
    return filter;
  });
}

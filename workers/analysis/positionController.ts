import { motorConstants } from '../../shared/axis/motor.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { Biquad } from '../control/biquad.ts';
import { type Complex, minus, ONE, over, plus, real, scaled, times } from '../math/complex.ts';

/*
 * The position loop of control/positionLoop.ts in z, at z = exp(jωTp), with the same biquads:
 *
 *   F = [Kp + Ki Tp/(1 − z⁻¹)] (x_set − x_m) + Kd (v_set − v̂) + K_vff v_set + K_aff a_set
 *   v̂ = (a/Tp)(1 − z⁻¹)/(1 − (1 − a) z⁻¹) x_m,   a = Tp/(T_f + Tp)
 *   i* = lowpass notch2 notch1 F/K_f,pk
 */
export class PositionController {
  readonly period: number;
  /** The filters that are switched on, in order. */
  readonly filters: readonly Biquad[];
  readonly perForce: number;
  /** Weight of a new difference in the speed estimate. */
  readonly speedWeight: number;

  readonly #p: Parameters;

  constructor(p: Parameters) {
    this.#p = p;
    const rate = p.currentRate / p.positionDivider;
    this.period = 1 / rate;
    this.perForce = 1 / motorConstants(p).forcePerAmp;
    this.speedWeight = this.period / (p.derivativeTime + this.period);
    this.filters = filtersOf(p, rate);
  }

  /** −i* over the encoder reading, A/m: the feedback. */
  feedback(z: Complex): Complex {
    const { period, speedWeight } = this;
    const p = this.#p;
    const difference = oneMinusInverse(z);
    const speed = over(
      scaled(difference, speedWeight / period),
      plus(ONE, scaled(over(ONE, z), speedWeight - 1)),
    );
    return times(this.#shaping(z), plus(this.#positionGain(difference), scaled(speed, p.Kd)));
  }

  /** i* over a sine setpoint of angular frequency ω with its own speed and acceleration, A/m. */
  feedforward(z: Complex, omega: number): Complex {
    const p = this.#p;
    const motion = {
      re: -p.accelerationFeedforward * omega * omega,
      im: (p.Kd + p.speedFeedforward) * omega,
    };
    return times(this.#shaping(z), plus(this.#positionGain(oneMinusInverse(z)), motion));
  }

  #positionGain(difference: Complex): Complex {
    const p = this.#p;
    if (p.Ki === 0) return real(p.Kp);
    return plus(real(p.Kp), over(real(p.Ki * this.period), difference));
  }

  /** Filters and force per ampere. */
  #shaping(z: Complex): Complex {
    return this.filters.reduce(
      (product, filter) => times(product, biquadResponse(filter, z)),
      real(this.perForce),
    );
  }
}

/** H(z) of a second-order section. */
export function biquadResponse({ b0, b1, b2, a1, a2 }: Biquad, z: Complex): Complex {
  const square = times(z, z);
  const polynomial = (c0: number, c1: number, c2: number) =>
    plus(plus(scaled(square, c0), scaled(z, c1)), real(c2));
  return over(polynomial(b0, b1, b2), polynomial(1, a1, a2));
}

function oneMinusInverse(z: Complex): Complex {
  return minus(ONE, over(ONE, z));
}

function filtersOf(p: Parameters, rate: number): Biquad[] {
  const filters: Biquad[] = [];
  const add = (set: (filter: Biquad) => void) => {
    const filter = new Biquad();
    set(filter);
    filters.push(filter);
  };
  if (p.notch1) add((f) => f.setNotch(p.notch1Frequency, p.notch1Width, p.notch1Depth, rate));
  if (p.notch2) add((f) => f.setNotch(p.notch2Frequency, p.notch2Width, p.notch2Depth, rate));
  if (p.lowpass) add((f) => f.setLowpass(p.lowpassFrequency, p.lowpassDamping, rate));
  return filters;
}

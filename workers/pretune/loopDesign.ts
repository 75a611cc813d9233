import { type FeedbackWeights, feedbackWeights } from '../../shared/axis/loop/feedback.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import { signOfLife } from '../../shared/core/signOfLife.ts';
import { LoopFamily } from './loopFamily.ts';
import { highestCrossover, isStable, type LoopLimit, sensitivityOf, tightness } from './loopLimit.ts';
import { type PlantResponse, plantResponse } from './plantResponse.ts';
import { type Shape, shapeChanges, shapeGains } from './shape.ts';
import { DESIGN_VARIATIONS } from './variations.ts';

/** Range of crossovers: from this one, Hz, to this share of half the rate of the position loop. */
const LOWEST_CROSSOVER = 2;
const HIGHEST_SHARE = 0.2;
/** Noise and rounding of the encoder may take this share of the continuous current. */
export const NOISE_SHARE = 0.02;
/**
 * Every design variation keeps this share of the distance to −1 that the limit demands of the
 * nominal machine.
 */
export const DISTANCE_KEPT = 0.5;

/** A shape at the highest crossover that its limit allows. */
export interface LoopDesign {
  readonly shape: Shape;
  readonly gains: ParameterChanges;
  /** Force per integral of the position error, N/(m·s): how fast a disturbance is worked off. */
  readonly rejection: number;
}

/** Finds how fast loops of given shapes can be on one machine, nominal and varied. */
export class LoopDesigner {
  readonly plant: PlantResponse;
  readonly #varied: readonly PlantResponse[];
  readonly #p: Parameters;

  /** @param points of each response; more of them find narrower peaks */
  constructor(p: Parameters, points: number) {
    this.#p = p;
    this.plant = plantResponse(p, points);
    this.#varied = DESIGN_VARIATIONS.map(({ changes }) => plantResponse({ ...p, ...changes(p) }, points));
  }

  /** Rate of the position loop, Hz. */
  get rate(): number {
    return this.#p.currentRate / this.#p.positionDivider;
  }

  /** @param worthwhile rejects loops that are of no use, before the last and slowest check */
  fastest(
    shape: Shape,
    limit: LoopLimit,
    worthwhile: (rejection: number) => boolean = () => true,
  ): LoopDesign | null {
    signOfLife();
    const p = { ...this.#p, ...shapeChanges(this.#p, shape) };
    const nominal = new LoopFamily(p, this.plant);
    // Many shapes come to nothing on the nominal machine already.
    const families: LoopFamily[] = [];
    const varied = (k: number, plant: PlantResponse) => {
      families[k] ??= new LoopFamily(p, plant);
      return families[k];
    };
    const noise = Math.hypot(p.encoderNoise, p.encoderResolution / Math.sqrt(12));
    const maxNoise = NOISE_SHARE * p.continuousCurrent;
    const maxVaried = sensitivityOf(limit) / DISTANCE_KEPT;
    const speedNoise = p.motorEncoderResolution / Math.sqrt(12);
    const gainsAt = (crossover: number) => shapeGains(p, shape, crossover);
    const { controller, Kp, Ki, Kd, positionLoopGain, velocityGain, resetTime } = p;
    const given = { controller, Kp, Ki, Kd, positionLoopGain, velocityGain, resetTime };
    const weightsAt = (crossover: number) => feedbackWeights({ ...given, ...gainsAt(crossover) });
    const crossover = highestCrossover(
      [2 * Math.PI * LOWEST_CROSSOVER, HIGHEST_SHARE * Math.PI * this.rate],
      // The rejection rises with the crossover.
      (crossover) => worthwhile(rejectionOf(p, weightsAt(crossover))),
      (crossover) => {
        const weights = weightsAt(crossover);
        return (
          tightness(nominal, weights, limit) <= 1 &&
          nominal.noiseCurrent(weights, noise, speedNoise) <= maxNoise &&
          this.#varied.every((plant, k) => varied(k, plant).peakSensitivity(weights) <= maxVaried)
        );
      },
      (crossover) => {
        const gains = gainsAt(crossover);
        return (
          worthwhile(rejectionOf(p, weightsAt(crossover))) &&
          [this.plant, ...this.#varied].every((plant) => isStable({ ...p, ...gains }, plant))
        );
      },
    );
    if (crossover === null) return null;
    return { shape, gains: gainsAt(crossover), rejection: rejectionOf(p, weightsAt(crossover)) };
  }
}

/** An observer of bandwidth ω_o multiplies the feedback a + b/s by 1 + ω_o/s: its integral part is b + a ω_o. */
function rejectionOf(p: Parameters, { error, errorIntegral }: FeedbackWeights): number {
  return errorIntegral + (p.observer ? 2 * Math.PI * p.observerBandwidth * error : 0);
}

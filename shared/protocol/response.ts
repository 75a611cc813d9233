import type { ModeSide } from '../core/movedMass.ts';
import type { ParameterChanges, Parameters } from '../core/parameters/table.ts';
import type { MeasuredLoop } from './analysis.ts';

/** What a measured frequency response is of: L, S = 1/(1 + L), or the position at the encoder over the force of the motor, m/N. */
export const RESPONSE_KINDS = ['open loop', 'sensitivity', 'plant'] as const;
export type ResponseKind = (typeof RESPONSE_KINDS)[number];

/** A frequency response as it was measured on a real axis. */
export interface MeasuredResponse {
  readonly kind: ResponseKind;
  /** Hz, ascending. */
  readonly frequency: Float64Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Motor and table, rigid or on a link, with flexible parts, behind a delay, fitted to a response. SI. */
export interface AxisFit {
  /** All that moves, kg. */
  readonly mass: number;
  /** Null where the response shows no resonance that a rigid mass would not explain as well. */
  readonly link: {
    readonly stiffness: number;
    readonly damping: number;
    /** Hz, and its damping ratio. */
    readonly resonance: number;
    readonly dampingRatio: number;
  } | null;
  /** Flexible parts, by rising frequency. */
  readonly modes: readonly {
    readonly side: ModeSide;
    readonly mass: number;
    /** Hz, with its side held. */
    readonly frequency: number;
    readonly dampingRatio: number;
  }[];
  readonly delay: number;
  /** RMS of what is left between response and model, as a factor less 1 and in rad together. */
  readonly error: number;
  /** Every shape that was fitted, fewer parts first. */
  readonly tried: readonly TriedShape[];
  /** The fit as rows of the parameter table. */
  readonly changes: ParameterChanges;
}

/** A shape of the axis that was fitted, to see whether its parts are worth having. */
export interface TriedShape {
  readonly link: boolean;
  /** Number of flexible parts. */
  readonly modes: number;
  /** RMS of what it leaves, as that of the fit. */
  readonly error: number;
  /** Bayesian information criterion: less is better. */
  readonly criterion: number;
}

/** A measured response beside the loop of the model, and what it says of the axis. */
export interface TakenResponse {
  readonly loop: MeasuredLoop;
  /** The fit, or in plain words why there is none. */
  readonly fit: AxisFit | string;
}

/** A command of the measurement worker, beside that of analysis.ts. */
export interface ResponseCommands {
  /** @throws RangeError where a measured response has too few points. */
  takeResponse(parameters: Parameters, response: MeasuredResponse): TakenResponse;
}

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

/** Motor and table as two masses on a link behind a delay, fitted to a response. SI. */
export interface TwoMassFit {
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
  readonly delay: number;
  /** RMS of what is left between response and model, as a factor less 1 and in rad together. */
  readonly error: number;
  /** The fit as rows of the parameter table. */
  readonly changes: ParameterChanges;
}

/** A measured response beside the loop of the model, and what it says of the axis. */
export interface TakenResponse {
  readonly loop: MeasuredLoop;
  /** The fit, or in plain words why there is none. */
  readonly fit: TwoMassFit | string;
}

/** A command of the analysis worker, beside those of analysis.ts. */
export interface ResponseCommands {
  /** @throws RangeError where a measured response has too few points. */
  takeResponse(parameters: Parameters, response: MeasuredResponse): TakenResponse;
}

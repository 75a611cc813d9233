import type { ParameterChanges, Parameters } from '../core/parameters/table.ts';
import type { Unit } from '../core/units.ts';
import type { Trace } from './trace.ts';

/** What can be fitted to a trace, and how a person reads it. */
export const FITTED = {
  mass: { label: 'Moved mass', unit: 'kg' },
  forceConstant: { label: 'Force constant at 20 °C, per A RMS', unit: 'N/A' },
  coulomb: { label: 'Sliding friction', unit: 'N' },
  viscous: { label: 'Viscous friction', unit: 'N·s/m' },
  bias: { label: 'Constant load: gravity less counterbalance', unit: 'N' },
  linkStiffness: { label: 'Stiffness between motor and table', unit: 'N/µm' },
  backlash: { label: 'Lost motion', unit: 'µm' },
  delay: { label: 'Delay of the current behind its command', unit: 'µs' },
} as const satisfies Record<string, { label: string; unit: Unit }>;

export type FittedName = keyof typeof FITTED;

/** A fitted number with what is known about it. SI. */
export interface Estimate {
  readonly value: number;
  /** The true value lies between these with 95 % confidence. */
  readonly low: number;
  readonly high: number;
  /** Half-widths that make up the interval: what the trace scatters, and what was taken as known and is not exactly. */
  readonly scatter: number;
  readonly tolerance: number;
}

/**
 * Current and position alone tell mass over force constant, not the two apart. So one of them is taken as known, or a second run with a
 * known mass added tells both. `tolerance` is the relative half-width of what is known, 95 %.
 */
export type Known =
  | { readonly kind: 'force constant'; readonly tolerance?: number }
  | { readonly kind: 'mass'; readonly mass: number; readonly tolerance?: number }
  | {
      readonly kind: 'added mass';
      readonly trace: Trace;
      readonly mass: number;
      readonly tolerance?: number;
    };

export interface FitOptions {
  /** The force constant of the parameters, when nothing is said. */
  readonly known?: Known;
  /** Relative half-width of the mass on the motor side, which parts the link from it; 1 % when nothing is said. */
  readonly motorMassTolerance?: number;
}

/** Forces while the table moves, averaged over windows of `window` seconds. Every array has one entry a window. */
export interface ForceResidual {
  readonly window: number;
  readonly time: Float64Array<ArrayBuffer>;
  /** Force of the measured current, of the fitted model, and what is left, N. */
  readonly measured: Float64Array<ArrayBuffer>;
  readonly model: Float64Array<ArrayBuffer>;
  readonly residual: Float64Array<ArrayBuffer>;
  /** 1 where the window was fitted; 0 where the table stands, turns round or the record has a gap, which the model does not claim to describe. */
  readonly used: Uint8Array<ArrayBuffer>;
}

/** How well the forces are described, over the windows that were fitted. */
export interface Goodness {
  /** N */
  readonly rmsResidual: number;
  readonly rmsForce: number;
  /** Share of the force's mean square that the model explains, 0 to 1. */
  readonly explained: number;
  /** Ljung and Box's statistic of the residual; above `whiteLimit` it is not white, at 1 % risk of saying so wrongly. */
  readonly whiteness: number | null;
  readonly whiteLimit: number;
  /** By what factor the interval of the mass is wider than if the residual were white. */
  readonly widened: number;
  /** 'poor' means that more is left than the model should leave: read the numbers with care. */
  readonly verdict: 'white' | 'not white' | 'poor';
}

/** Table or motor position over force about the resonance of the link, as measured and as fitted, m/N over Hz. */
export interface ResonanceFit {
  readonly resonance: number;
  readonly frequency: Float64Array<ArrayBuffer>;
  readonly measured: Float64Array<ArrayBuffer>;
  readonly model: Float64Array<ArrayBuffer>;
}

export interface FitResult {
  readonly estimates: { readonly [N in FittedName]?: Estimate };
  /** Why the others could not be fitted, in plain words. */
  readonly unfitted: { readonly [N in FittedName]?: string };
  readonly forces: ForceResidual | null;
  readonly goodness: Goodness | null;
  readonly resonance: ResonanceFit | null;
  /** What a person should know before believing the numbers. */
  readonly notes: readonly string[];
  /** The estimates as rows of the parameter table; still to be checked like anything typed. */
  readonly changes: ParameterChanges;
}

/** The commands of the fit worker. */
export interface FitCommands {
  /** What the trace says of the axis that `parameters` describe. */
  fit(trace: Trace, parameters: Parameters, options: FitOptions): FitResult;
}

import type { Parameters } from '../core/parameters/table.ts';
import type { Scene } from '../core/scene.ts';

/** Where the loop is linearised. The parameters say everything else. SI, °C. */
export interface OperatingPoint {
  /** Of the table, inside the travel. */
  readonly position: number;
  /** Of the table; 0 stands still. */
  readonly speed: number;
  /** From outside on the table, along +x. The motor current that holds against it, gravity, cogging and drag follows from it. */
  readonly loadForce: number;
  readonly windingTemperature: number;
  readonly carrierTemperature: number;
  readonly tableTemperature: number;
  readonly screwTemperature: number;
  /**
   * presliding: the table stands, the guide's bristles are springs and dampers. sliding: at a speed, the bristles follow it as they do
   * there; at speed 0 all dry friction counts as a constant force, as in a swing so wide that it only turns round at the ends.
   */
  readonly friction: 'presliding' | 'sliding';
}

/** The scene as it starts: standing, everything at its first temperature. */
export function startingPoint(p: Parameters): OperatingPoint {
  return {
    position: p.start,
    speed: 0,
    loadForce: 0,
    windingTemperature: p.windingStart,
    carrierTemperature: p.carrierStart,
    tableTemperature: p.ambient,
    screwTemperature: p.ambient,
    friction: 'presliding',
  };
}

/** A complex frequency response over the frequencies of its analysis: magnitude, and phase in rad without jumps. */
export interface Response {
  readonly magnitude: Float64Array<ArrayBuffer>;
  readonly phase: Float64Array<ArrayBuffer>;
}

/** A number at the frequency (Hz) where it was found. */
export interface AtFrequency {
  readonly value: number;
  readonly frequency: number;
}

/**
 * The figures of a loop, each found on the exact response, not read off the grid. Of an unstable loop they say how the curve runs; they
 * are no margins then.
 */
export interface LoopFigures {
  /** Every closed-loop eigenvalue inside the unit circle. */
  readonly stable: boolean;
  /** Largest magnitude of a closed-loop eigenvalue: growth per position-loop sample. */
  readonly spectralRadius: number;
  /** A stable loop that too little gain would make unstable too. */
  readonly conditional: boolean;
  /** The crossover that the controller was made for, Hz; null without one. */
  readonly crossover: number | null;
  /** Every frequency where |L| = 1, Hz, ascending. */
  readonly crossovers: readonly number[];
  /** Smallest distance of the phase from −180° at a crossover, rad; negative: beyond it. Null without a crossover. */
  readonly phaseMargin: AtFrequency | null;
  /** Smallest factor above 1 on the gain that meets −1; null when none does. */
  readonly gainMargin: AtFrequency | null;
  /** Largest factor below 1 on the gain that meets −1; null when none does. */
  readonly gainReduction: AtFrequency | null;
  /** Smallest additional delay that meets −1, s; null without a crossover, and of an unstable loop. */
  readonly delayMargin: AtFrequency | null;
  /** Smallest |1 + L|; its inverse is the peak of the sensitivity. */
  readonly modulusMargin: AtFrequency;
  /** Peak of |T|. */
  readonly closedLoopPeak: AtFrequency;
  /** Lowest frequency where |T| falls below 1/√2, Hz; null when it never does. */
  readonly bandwidth: number | null;
  /** Force over deflection of the table at standstill, N/m; Infinity when the integrator removes any deflection. */
  readonly staticStiffness: number;
  /** Least stiffness over all frequencies, N/m. */
  readonly minimumStiffness: AtFrequency;
  /** Motor current and voltage amplitude that hold the operating point, A, V. */
  readonly holdingCurrent: number;
  readonly holdingVoltage: number;
}

/** The sampled loop at an operating point, cut at the current command. Every array is transferred. */
export interface LoopAnalysis {
  /** Hz, ascending to half the rate of the position loop; closer together where a response turns fast. */
  readonly frequency: Float64Array<ArrayBuffer>;
  /** L, also as real and imaginary part for the Nyquist plot. */
  readonly openLoop: Response;
  readonly nyquistRe: Float64Array<ArrayBuffer>;
  readonly nyquistIm: Float64Array<ArrayBuffer>;
  /** S = 1/(1 + L) */
  readonly sensitivity: Response;
  /** T = L/(1 + L) */
  readonly closedLoop: Response;
  /** Encoder reading over a sine setpoint, with the feedforward as it is set. */
  readonly tracking: Response;
  /** Force on the table over its position, N/m. */
  readonly stiffness: Response;
  /** Of the closed loop over one position-loop sample, largest magnitude first. */
  readonly eigenvaluesRe: Float64Array<ArrayBuffer>;
  readonly eigenvaluesIm: Float64Array<ArrayBuffer>;
  readonly figures: LoopFigures;
}

/** A measurement of the loop in the simulation: a force sweep at its output, set by the sweep rows of the scene's parameters. */
export interface LoopExperiment {
  readonly kind: 'stepped sine' | 'chirp';
  readonly scene: Scene;
}

/** The commands of the analysis worker. */
export interface AnalysisCommands {
  /** @throws RangeError naming what of the operating point cannot be, with the allowed range. */
  analyse(parameters: Parameters, point: OperatingPoint): LoopAnalysis;
}

/** A command of the measurement worker, beside that of response.ts. */
export interface MeasurementCommands {
  /** Keeps the worker busy until it is through; `onProgress` hears the share done, 0 to 1. Ending the worker cancels it. */
  measure(experiment: LoopExperiment, onProgress: (share: number) => void): MeasuredLoop;
}

/** A loop as measured by a force added at its output, where the analysis cuts it. Every array is transferred. */
export interface MeasuredLoop {
  /** Hz, ascending. */
  readonly frequency: Float64Array<ArrayBuffer>;
  readonly openLoop: Response;
  readonly sensitivity: Response;
  /** Share of the commanded force that repeats as a linear response to the added one: 1 without noise and friction. */
  readonly coherence: Float64Array<ArrayBuffer>;
  /** Why the measurement ended early, in plain words; null when it is complete. */
  readonly ended: string | null;
}

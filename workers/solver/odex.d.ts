/** The part of odex 3 that is used here; the package ships no declaration file. */
export type Derivative = (x: number, y: number[], dy: number[]) => void;

export interface SolutionSegment {
  readonly x0: number;
  readonly x1: number;
  readonly y: number[];
}

export interface Options {
  rawFunction: boolean;
  denseOutput: boolean;
  initialStepSize: number;
  maxStepSize: number;
  maxSteps: number;
  stabilityCheckCount: number;
  relativeTolerance: number | number[];
  absoluteTolerance: number | number[];
}

export declare class Solver {
  constructor(f: Derivative, n: number, options?: Partial<Options>);
  solutionSegments(x: number, y0: number[], xEnd?: number): Generator<SolutionSegment, undefined>;
}

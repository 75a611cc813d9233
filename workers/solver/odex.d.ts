/** The part of odex 3 that is used here; the package ships no declaration file. Y is a vector of fixed length. */
export type Derivative<Y extends number[]> = (x: number, y: Y, dy: Y) => void;

export interface SolutionSegment<Y extends number[]> {
  readonly x0: number;
  readonly x1: number;
  readonly y: Y;
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

export declare class Solver<Y extends number[]> {
  constructor(f: Derivative<Y>, n: number, options?: Partial<Options>);
  solutionSegments(x: number, y0: Y, xEnd?: number): Generator<SolutionSegment<Y>, undefined>;
}

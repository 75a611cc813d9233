import type { Scene } from '../core/scene.ts';
import type { MachineResult, RunResult } from './runFigures.ts';
import type { ToleranceSummary } from './summary.ts';
import type { ToleranceStudy } from './toleranceStudy.ts';

/** What the page asks of a worker of tolerance studies. Some run machines, one sums up. */
export interface ToleranceCommands {
  /** Cycles to be left out, found on the scene as it is. */
  leadIn(scene: Scene): number;
  /** What the scene as it is comes to, after those cycles. */
  nominal(scene: Scene): MachineResult;
  /** Runs machines `from` to `to`, both included, counted from 1. */
  run(study: ToleranceStudy, leadIn: number, from: number, to: number): RunResult[];
  /** Forgets what it has taken. */
  begin(study: ToleranceStudy): void;
  /** Takes more results, and says what all of them come to. */
  take(results: readonly RunResult[]): ToleranceSummary | null;
}

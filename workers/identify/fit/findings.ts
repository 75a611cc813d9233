import type { Estimate, FittedName } from '../../../shared/protocol/fit.ts';

/** Results of a fit, collected as it proceeds. */
export class Findings {
  readonly estimates: { [N in FittedName]?: Estimate } = {};
  readonly unfitted: { [N in FittedName]?: string } = {};
  readonly notes: string[] = [];

  /** Records a value (SI) with the half-widths due to scatter and to what was taken as known. */
  take(name: FittedName, value: number, scatter: number, tolerance: number): void {
    const half = Math.hypot(scatter, tolerance);
    this.estimates[name] = { value, low: value - half, high: value + half, scatter, tolerance };
  }

  miss(names: readonly FittedName[], reason: string): void {
    for (const name of names) this.unfitted[name] = reason;
  }

  note(text: string): void {
    this.notes.push(text);
  }
}

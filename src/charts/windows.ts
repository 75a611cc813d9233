/** Lengths of time that the charts may be set to show, s. */
export const WINDOWS = [0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 30];

/** Without a cycle to go by. */
const USUAL = 2;
/** As many cycles are compared at a glance: one, and the next that should look alike. */
const CYCLES = 2;

/** The one that suits a program with a cycle of so many s; null: with none. */
export function windowFor(cycle: number | null): number {
  const wanted = cycle === null ? USUAL : CYCLES * cycle;
  const off = (window: number) => Math.abs(Math.log(window / wanted));
  return WINDOWS.reduce((best, window) => (off(window) < off(best) ? window : best));
}

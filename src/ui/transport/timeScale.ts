/** Simulated seconds per second that can be asked for; Infinity is as fast as it goes. */
export const TIME_SCALES = [
  1 / 1000,
  1 / 500,
  1 / 200,
  1 / 100,
  1 / 50,
  1 / 20,
  1 / 10,
  1 / 5,
  1 / 2,
  1,
  2,
  5,
  10,
  Number.POSITIVE_INFINITY,
] as const;

export const REAL_TIME = TIME_SCALES.indexOf(1);

/** A time scale that was asked for, in words. */
export function timeScaleText(timeScale: number): string {
  if (timeScale === Number.POSITIVE_INFINITY) return 'as fast as possible';
  if (timeScale === 1) return 'real time';
  return timeScale < 1 ? `1/${Math.round(1 / timeScale)} of real time` : `${timeScale} × real time`;
}

/** The slowest that can be asked for. Below it the simulation has all but stopped. */
const SLOWEST = 1 / 1001;

/** A time scale that was measured: as a fraction below a tenth, as a factor above. */
export function measuredTimeScaleText(timeScale: number): string {
  if (timeScale <= 0) return '0 × real time';
  if (timeScale < SLOWEST) return 'less than 1/1000 of real time';
  if (timeScale < 0.095) return `1/${Math.round(1 / timeScale)} of real time`;
  return `${timeScale < 10 ? timeScale.toFixed(2) : Math.round(timeScale)} × real time`;
}

/** Less than this is lost by any start, s of the clock. */
const MIN_LOSS = 0.1;

/** The computer counts as too slow when it stays a tenth behind what was asked for. */
export function fallsBehind(asked: number, achieved: number, lost: number): boolean {
  return Number.isFinite(asked) && achieved < 0.9 * asked && lost > MIN_LOSS;
}

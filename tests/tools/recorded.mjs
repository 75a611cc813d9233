/** What is kept of a simulated candidate, for tests and for the example that opens first. */

/** As many entries of a list are kept of a job of the trade at most: the verdict reads figures, ends and largest values of them. */
export const JOB_LENGTHS = { heat: 9, accuracy: 9 };

/** Digits of a number that are kept. */
const DIGITS = 6;

/**
 * Every number to a few digits, and of long lists every n-th entry.
 * @param {unknown} value
 * @param {number} maxLength
 * @returns {any}
 */
export function thinned(value, maxLength) {
  if (typeof value === 'number') return Number(value.toPrecision(DIGITS));
  if (Array.isArray(value)) {
    const step = Math.max(1, Math.ceil((value.length - 1) / (maxLength - 1)));
    return value
      .filter((_, k) => k % step === 0 || k === value.length - 1)
      .map((each) => thinned(each, maxLength));
  }
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, thinned(each, maxLength)]));
}

/** The terms of the energy of a cycle add up to what is drawn, also once they are rounded. */
function balanced(energy) {
  const { cycleTime, drawn, ...terms } = energy;
  return { ...energy, drawn: Object.values(terms).reduce((sum, each) => sum + each, 0) };
}

/**
 * What the tests need of a candidate; its scene and its sizing follow from the choice.
 * @param {{ choice: object, outcome: any }} candidate
 * @param {{ heat: number, accuracy: number }} maxLengths entries that are kept of a list, of a day of heat and of tests
 */
export function recorded({ choice, outcome }, maxLengths) {
  const { accuracy: whole, ...others } = outcome;
  const rest = thinned(others, maxLengths.heat);
  const accuracy = thinned(whole, maxLengths.accuracy);
  return { choice, outcome: { ...rest, accuracy: { ...accuracy, energy: balanced(accuracy.energy) } } };
}

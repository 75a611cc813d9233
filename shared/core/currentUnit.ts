/** A current is an amplitude inside; drives and datasheets print it as a peak value or as RMS. */
export const CURRENT_UNITS = ['A peak', 'A RMS'] as const;
export type CurrentUnit = (typeof CURRENT_UNITS)[number];

let chosen: CurrentUnit = 'A peak';

/** The unit in which a person reads and types currents: one setting for all text, as a language would be. */
export function currentUnit(): CurrentUnit {
  return chosen;
}

/** A text of a current without the kind of its ampere: for where that is said beside it, or means nothing. */
export function plainAmperes(text: string): string {
  return text.replace(/ (peak|RMS)$/, '');
}

/** Holds from the next text on; whoever changes it shows the others again. */
export function setCurrentUnit(unit: CurrentUnit): void {
  chosen = unit;
}

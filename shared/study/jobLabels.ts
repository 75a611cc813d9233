import { nameAsText } from '../core/parameters/labels.ts';
import type { Name } from '../core/sentence.ts';
import type { JobEntry } from './job.ts';

/** What the general rule would call too short. */
const LABELS: Partial<Record<JobEntry, string>> = {
  travel: 'Machine travel',
  counterbalanced: 'Counterbalanced',
  process: 'Process',
  processForce: 'Process force',
  processFrequency: 'Frequency of the process force',
  processTime: 'Length of a pulse',
  window: 'Window, ±',
  smallestStep: 'Smallest step required',
  growthLimit: 'Thermal drift allowed',
  wear: 'Nut wear',
  rippleLimit: 'Speed ripple allowed',
  rippleBandwidth: 'Bandwidth of the ripple',
  cooling: 'Coolant available',
  dailyTime: 'Hours per day',
  days: 'Days per year',
  comparableBy: 'Comparable by',
  decidedBy: 'Decided by',
  years: 'Years counted',
  priceLow: 'Price of low effort',
  priceMedium: 'Price of medium effort',
  priceHigh: 'Price of high effort',
  energyPrice: 'Energy price',
  regeneration: 'Feeds back to the mains',
  busCapacitance: 'Bus capacitance',
  savingThatCounts: 'Saving that counts',
};

/** How a person calls an entry of a job. */
export function jobLabel(name: JobEntry): string {
  return LABELS[name] ?? nameAsText(name);
}

/** '5 years' */
export function yearsText(years: number): string {
  return `${years} ${years === 1 ? 'year' : 'years'}`;
}

/** An entry of a job in a message; it is worded as a name or as a label where it is shown. */
export function jobNamed(name: JobEntry): Name {
  return { name, label: jobLabel(name) };
}

import { nameAsText } from '../core/parameters/labels.ts';
import type { Name } from '../core/sentence.ts';
import type { JobEntry } from './job.ts';

/** What the general rule would call too short. */
const LABELS: Partial<Record<JobEntry, string>> = {
  travel: 'Travel of the machine',
  counterbalanced: 'Counterbalanced',
  process: 'Process force',
  processForce: 'Force of the process',
  processFrequency: 'Frequency of the force',
  processTime: 'Length of a pulse',
  window: 'Window, ±',
  growthLimit: 'Growth allowed',
  wear: 'Wear of a nut',
  rippleLimit: 'Speed ripple allowed',
  cooling: 'Coolant at hand',
  dailyTime: 'Duty a day',
  days: 'Days a year',
};

/** How a person calls an entry of a job. */
export function jobLabel(name: JobEntry): string {
  return LABELS[name] ?? nameAsText(name);
}

/** An entry of a job in a message, which whoever shows it words as a name or as a label. */
export function jobNamed(name: JobEntry): Name {
  return { name, label: jobLabel(name) };
}

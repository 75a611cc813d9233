import type { Job, JobEntry, JobValues } from './job.ts';

/** When an entry of a job has a say; one that is not listed always has. */
const ASKED: Partial<Record<JobEntry, (values: JobValues) => boolean>> = {
  counterbalanced: ({ inclination }) => inclination !== 0,
  stroke: ({ motion }) => motion === 'back and forth',
  moveTime: ({ motion }) => motion === 'back and forth',
  dwell: ({ motion }) => motion === 'back and forth',
  processForce: ({ process }) => process !== 'none',
  processFrequency: ({ process }) => process === 'sine' || process === 'pulse',
  processTime: ({ process }) => process === 'pulse',
  scanSpeed: ({ rippleLimit }) => rippleLimit > 0,
  scanLength: ({ rippleLimit }) => rippleLimit > 0,
  rippleBandwidth: ({ rippleLimit }) => rippleLimit > 0,
  coolantTemperature: ({ cooling }) => cooling,
};

export function isAsked(name: JobEntry, { values }: Job): boolean {
  return ASKED[name]?.(values) ?? true;
}

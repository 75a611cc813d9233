import type { Criterion } from './ranking.ts';

/** What a drive that came first is said to be once it falls behind by a criterion. */
export const BEHIND: Readonly<Record<Criterion, string>> = {
  inPlace: 'is then in position later than the quickest',
  total: 'then costs more by an amount that counts',
  winding: 'then has a warmer winding, with cost and time as good as equal',
};

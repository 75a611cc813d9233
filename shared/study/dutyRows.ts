import { linear } from '../core/parameters/row.ts';

/** How long it does it. Apart from the rest of a job: the bench, too, counts years by these hours and days. */
export const dutyRows = {
  dailyTime: linear('', 'h', [360, 86400], 8 * 3600, 'Hours per day'),
  days: linear('', '', [1, 366], 250, 'Working days per year', { integer: true }),
};

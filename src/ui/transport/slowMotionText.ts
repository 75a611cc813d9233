/** The switch of slow motion, wherever there is one. */
export const SLOW_MOTION_LABEL = 'Slow motion at events';
export const SLOW_MOTION_TITLE =
  'At 1/20 of the pace, and of real time at most, as a move arrives and settles, as the table slips, and before a trip';

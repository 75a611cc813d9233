/** The switch of slow motion, wherever there is one. */
export const SLOW_MOTION_LABEL = 'Slow motion at events';
export const SLOW_MOTION_TITLE =
  'Runs at 1/20 of the set pace, or of real time if that is slower, as a move arrives and settles, as the table slips, and before a trip';

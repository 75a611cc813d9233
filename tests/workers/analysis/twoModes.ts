import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';

/** Two parts on the table that swing by themselves. */
export const TWO_MODES: ParameterChanges = {
  mode1: 'table',
  mode1Mass: 1,
  mode1Frequency: 60,
  mode1Damping: 0.03,
  mode2: 'table',
  mode2Mass: 0.4,
  mode2Frequency: 160,
  mode2Damping: 0.02,
};

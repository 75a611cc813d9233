import type { FigureOf } from '../../../shared/figures/figure.ts';
import {
  DISTURBANCE_FIGURES,
  INCREMENT_FIGURES,
  POSITIONING_FIGURES,
  RIPPLE_FIGURES,
  STAIRCASE_FIGURES,
} from '../../../shared/figures/testFigures.ts';
import type {
  DisturbanceTest,
  IncrementTest,
  PositioningTest,
  RippleTest,
  StaircaseTest,
} from '../../../shared/protocol/accuracy.ts';
import type { JobValues } from '../../../shared/study/job.ts';
import { type Fails, figureRows } from './figureRow.ts';
import type { TableRow } from './table.ts';

/** The figures of each acceptance test. */
interface Tests {
  readonly positioning: PositioningTest;
  readonly staircase: StaircaseTest;
  readonly ripple: RippleTest;
  readonly increment: IncrementTest;
  readonly disturbance: DisturbanceTest;
}

const FIGURES: { readonly [K in keyof Tests]: Readonly<Record<string, FigureOf<Tests[K]>>> } = {
  positioning: POSITIONING_FIGURES,
  staircase: STAIRCASE_FIGURES,
  ripple: RIPPLE_FIGURES,
  increment: INCREMENT_FIGURES,
  disturbance: DISTURBANCE_FIGURES,
};

/** The figures of a test, a column for each time it was made; null where the drive tripped in it. */
export function testRows<K extends keyof Tests>(
  name: K,
  tests: readonly (Tests[K] | null)[],
  { rippleLimit }: JobValues,
): TableRow[] {
  const fails: Fails = name === 'ripple' && rippleLimit > 0 ? { peak: (value) => value > rippleLimit } : {};
  return figureRows(name, FIGURES[name], tests, { absent: () => 'trips', fails });
}

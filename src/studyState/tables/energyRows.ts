import { ENERGY_FIGURES } from '../../../shared/figures/energyFigures.ts';
import type { EnergyFlow } from '../../../shared/protocol/accuracy.ts';
import type { Job } from '../../../shared/study/job.ts';
import type { JudgedCandidate } from '../../../shared/verdict/judgement.ts';
import { YEAR_FIGURES } from '../../../shared/verdict/rows/yearFigures.ts';
import { figureRow, figureRows } from './figureRow.ts';
import type { TableRow } from './table.ts';

/** Share of energy drawn below which an energy is left out. */
const NEGLIGIBLE = 1e-5;

/** Energy of a cycle and where it goes; null where the drive tripped. What is nothing in every column is left out. */
export function energyRows(flows: readonly (EnergyFlow | null)[]): TableRow[] {
  const isShown = (of: (flow: EnergyFlow) => number) =>
    flows.some((flow) => flow !== null && Math.abs(of(flow)) > NEGLIGIBLE * flow.drawn);
  const shown = Object.entries(ENERGY_FIGURES).filter(([, { of }]) => isShown(of));
  return figureRows('energy', Object.fromEntries(shown), flows, { absent: () => 'trips' });
}

/** Mean power over the day, and what a year of it takes and costs. */
export function yearRows(candidates: readonly JudgedCandidate[], job: Job): TableRow[] {
  return Object.entries(YEAR_FIGURES).map(([name, figure]) =>
    figureRow(
      `year-${name}`,
      figure,
      candidates.map((candidate) => figure.of(candidate, job)),
    ),
  );
}

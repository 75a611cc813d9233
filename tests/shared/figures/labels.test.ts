import { expect, test } from 'vitest';
import { ENERGY_FIGURES } from '../../../shared/figures/energyFigures.ts';
import { HEAT_FIGURES } from '../../../shared/figures/heatFigures.ts';
import { LOOP_FIGURES } from '../../../shared/figures/loopFigures.ts';
import { MOVE_FIGURES } from '../../../shared/figures/moveFigures.ts';
import {
  DISTURBANCE_FIGURES,
  INCREMENT_FIGURES,
  POSITIONING_FIGURES,
  RIPPLE_FIGURES,
  STAIRCASE_FIGURES,
} from '../../../shared/figures/testFigures.ts';
import { FIGURE_ROWS } from '../../../shared/verdict/rows/rows.ts';
import { YEAR_FIGURES } from '../../../shared/verdict/rows/yearFigures.ts';
import { recordedCandidates } from '../study/recordedStudy.ts';

const CATALOGUES = [
  HEAT_FIGURES,
  ENERGY_FIGURES,
  LOOP_FIGURES,
  MOVE_FIGURES,
  DISTURBANCE_FIGURES,
  INCREMENT_FIGURES,
  POSITIONING_FIGURES,
  RIPPLE_FIGURES,
  STAIRCASE_FIGURES,
  YEAR_FIGURES,
];

const repeated = (labels: readonly string[]) => labels.filter((label, k) => labels.indexOf(label) !== k);

test('one label stands for one quantity, simulated or calculated', () => {
  const simulated = CATALOGUES.flatMap((figures) => Object.values(figures).map(({ label }) => label));
  const calculated = new Set(
    recordedCandidates().flatMap(({ sizing }) => sizing.figures.map(({ label }) => label)),
  );
  expect(repeated([...simulated, ...calculated])).toEqual([]);
});

test('every row of the verdict has a label of its own', () => {
  expect(repeated(FIGURE_ROWS.map(({ label }) => label))).toEqual([]);
});

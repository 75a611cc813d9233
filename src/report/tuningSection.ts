import { inUnit, ranged } from '../../shared/format.ts';
import { MOVE_FIGURES, type MoveFigureName, moveFigureText } from '../../shared/moveFigures.ts';
import { gainSection } from '../../shared/sheet/gainRows.ts';
import { numberText } from '../../shared/sheet/quantityText.ts';
import type { Job } from '../../shared/study/job.ts';
import type { MoveOutcome } from '../../shared/study/outcome.ts';
import { type Markup, markup } from '../drawing/markup.ts';
import { isInUse } from '../panel/relevance.ts';
import { figureRow, meaning, quantityRow, table } from '../paper/paperParts.ts';
import type { SimulatedLane } from '../study/simulatedLane.ts';
import { halvedTable } from './halvedTable.ts';

const DIGITS = 5;

/** Of a move: what the outcome holds the worst of. */
const FIGURES = [
  'settlingTime',
  'peakError',
  'rmsError',
  'peakForce',
  'rmsForce',
  'peakCurrent',
  'rmsCurrent',
  'currentHeadroom',
  'voltageHeadroom',
] as const satisfies readonly (MoveFigureName & keyof MoveOutcome)[];

/** The loop as every lane is tuned: to the same peak sensitivity. Then what the moves of the job come to with it. */
export function tuningSection({ scene, choice, outcome }: SimulatedLane, { values }: Job): Markup {
  const { parameters: p } = scene;
  const gains = gainSection(p).rows.filter(
    ({ value, parameter }) => value !== 0 && value !== 'off' && (!parameter || isInUse(parameter, p)),
  );
  const asked = numberText(values.peakSensitivity, DIGITS);
  const origin =
    choice.gains === null
      ? 'Start gains by rule, not tuned.'
      : `Tuned to a peak sensitivity of ${asked}, as every lane is.`;
  const figures = [
    figureRow(
      'Peak sensitivity',
      inUnit(outcome.peakSensitivity, ''),
      'Largest |S|, S = 1/(1 + L): how much the loop makes worse what it makes worst.',
    ),
    figureRow(
      'Crossover',
      outcome.crossover === null ? 'none' : ranged(outcome.crossover, 'Hz'),
      'Highest frequency where |L| = 1, L the loop cut at the current command.',
    ),
  ];
  return markup`<section><h3>Tuning</h3>
<div class="words"><p>${origin} Gains in SI, as they are read back; those that are 0 or off are left out.</p></div>
${table('figures', ['Figure', 'Value', 'Meaning'], figures)}
${table(
  'quantities gains',
  ['Gain', 'Symbol', 'Value', 'Meaning'],
  gains.map(({ label, symbol, value, unit, how }) =>
    quantityRow(
      label,
      symbol,
      typeof value === 'number' ? `${numberText(value, DIGITS)} ${unit}` : value,
      how,
    ),
  ),
)}</section>
<section><h3>The moves as tuned</h3>
${moves(outcome.moves)}</section>`;
}

function moves(outcome: MoveOutcome): Markup {
  const rows = FIGURES.map(
    (
      name,
    ) => markup`<tr><th scope="row">${MOVE_FIGURES[name].label}</th><td class="value">${moveFigureText(name, outcome[name])}</td></tr>
`,
  );
  return markup`<div class="words"><p>${outcome.trip ? `The drive stopped itself: ${outcome.trip.message}` : `The worst of ${outcome.moves.length} simulated moves. How each figure is measured stands further below.`}</p></div>
${halvedTable('moved', ['Figure', 'Value'], rows)}`;
}

/** How the figures of the moves are measured: once for all lanes. */
export function moveDefinitions(): Markup {
  return markup`<dl class="meanings">${FIGURES.map((name) => meaning(MOVE_FIGURES[name].label, MOVE_FIGURES[name].definition))}</dl>`;
}

import { isInUse } from '../../../shared/axis/inUse.ts';
import { inUnit, ranged } from '../../../shared/core/format.ts';
import { fromSI, printedUnit, type Unit } from '../../../shared/core/units.ts';
import { MOVE_FIGURES, type MoveFigureName, moveFigureText } from '../../../shared/figures/moveFigures.ts';
import { tripText } from '../../../shared/figures/tripText.ts';
import { gainSection } from '../../../shared/sheet/gainRows.ts';
import { numberText } from '../../../shared/sheet/quantityText.ts';
import type { Job } from '../../../shared/study/job.ts';
import type { MoveOutcome } from '../../../shared/study/outcome.ts';
import { listed } from '../../../shared/verdict/text.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { type TableRow, ungrouped } from '../../studyState/tables/table.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { list, meanings } from '../paperParts.ts';
import { figureTable } from './figureTable.ts';

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

/** The loops as the candidates are tuned, all within the same peak sensitivity, and what the moves of the job come to with them. */
export function tuningOfAll(candidates: readonly SimulatedCandidate[], { values }: Job): Markup {
  if (candidates.length === 0) return markup``;
  const asked = numberText(values.peakSensitivity, DIGITS);
  const untuned = candidates.filter(({ sizing }) => !sizing.passes).map(({ letter }) => letter);
  const origin =
    untuned.length === 0
      ? `Every candidate is tuned to a peak sensitivity of at most ${asked}.`
      : `Tuned to a peak sensitivity of at most ${asked}; ${listed(untuned)}, ruled out by the sizing, ${untuned.length > 1 ? 'have' : 'has'} start gains by rule.`;
  const trips = candidates.flatMap(({ letter, outcome: { moves } }) =>
    moves.trip ? [`${letter}: its drive trips. ${tripText(moves.trip)}`] : [],
  );
  const counts = candidates
    .map(({ letter, outcome }) => `${letter}: ${outcome.moves.moves.length}`)
    .join(', ');
  const moves = FIGURES.map((name) =>
    row(
      MOVE_FIGURES[name].label,
      '',
      candidates.map(({ outcome }) => moveFigureText(name, outcome.moves[name])),
    ),
  );
  return markup`<section><h2>Tuning</h2>
<div class="words"><p>${origin} Gains that are 0 or off are omitted.</p></div>
${figureTable(ungrouped(candidates, [...loopRows(candidates), ...gainRows(candidates)]), { kind: 'by-candidate', head: 'Gain', meaning: 'below' })}</section>
<section><h3>The moves as tuned</h3>
<div class="words"><p>The worst of the simulated moves (${counts}). How each figure is measured is explained further below.</p>${trips.length > 0 ? list(trips) : ''}</div>
${figureTable(ungrouped(candidates, moves), { kind: 'by-candidate' })}</section>`;
}

function loopRows(candidates: readonly SimulatedCandidate[]): TableRow[] {
  return [
    row(
      'Peak sensitivity',
      'Largest |S|, S = 1/(1 + L): worst-case amplification of disturbances.',
      candidates.map(({ outcome }) => inUnit(outcome.peakSensitivity, '')),
    ),
    row(
      'Crossover',
      'Highest frequency where |L| = 1, L the loop cut at the current command.',
      candidates.map(({ outcome: { crossover } }) => (crossover === null ? 'none' : ranged(crossover, 'Hz'))),
    ),
  ];
}

function gainRows(candidates: readonly SimulatedCandidate[]): TableRow[] {
  const columns = candidates.map(({ scene: { parameters: p } }) =>
    gainSection(p).rows.filter(
      ({ value, parameter }) => value !== 0 && value !== 'off' && (!parameter || isInUse(parameter, p)),
    ),
  );
  const all = new Map(columns.flat().map((each) => [each.label, each]));
  return [...all.values()].map(({ label, symbol, how }) =>
    row(
      `${label} ${symbol}`,
      how,
      columns.map((gains) => {
        const gain = gains.find((each) => each.label === label);
        if (!gain) return 'none';
        return typeof gain.value === 'number' ? gainText(gain.value, gain.unit as Unit) : gain.value;
      }),
    ),
  );
}

/** In the units of the reader, to be typed in as it stands. */
function gainText(value: number, unit: Unit): string {
  const own = printedUnit(unit);
  return `${numberText(fromSI(value, own), DIGITS)} ${own}`;
}

function row(label: string, definition: string, texts: readonly string[]): TableRow {
  return { id: label, label, definition, cells: texts.map((text) => ({ text })) };
}

/** How the figures of the moves are measured: once for all candidates. */
export function moveDefinitions(): Markup {
  return meanings(FIGURES.map((name) => MOVE_FIGURES[name]));
}

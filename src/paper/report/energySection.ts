import { inUnit, ranged } from '../../../shared/core/format.ts';
import { ENERGY_FIGURE_NAMES, ENERGY_FIGURES } from '../../../shared/figures/energyFigures.ts';
import { durationText } from '../../../shared/figures/timeLapseText.ts';
import type { EnergyFlow } from '../../../shared/protocol/accuracy.ts';
import type { Job } from '../../../shared/study/job.ts';
import { energyFlowChart } from '../../drawings/energyFlow.ts';
import type { Size } from '../../plot/frame.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { energyRows, yearRows } from '../../studyState/tables/energyRows.ts';
import { type TableRow, ungrouped } from '../../studyState/tables/table.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { figure } from '../paperParts.ts';
import { measured, tested } from './accuracySection.ts';
import { figureTable } from './figureTable.ts';
import { quantityText } from './quantity.ts';

/** Lower than on the page, so that it stands below its table. */
const FLOW_SIZE: Size = { width: 640, height: 170 };

export function energySection(
  candidate: SimulatedCandidate,
  job: Job,
  candidates: readonly SimulatedCandidate[],
): Markup {
  const flows = measured(candidates.map(({ outcome }) => outcome.accuracy.energy));
  return markup`<section><h3>Energy</h3>
${yearly(candidate, job)}
${tested(
  candidate.outcome.accuracy.energy,
  (flow) => markup`${energy(flow)}
${figure('Where the energy of a cycle goes', energyFlowChart(flow, flows, FLOW_SIZE))}`,
)}</section>`;
}

/** Energy of each term, the mean power that it takes and its share of what is drawn. */
function energy(flow: EnergyFlow): Markup {
  const { cycleTime, drawn } = flow;
  const columns = ['Energy', 'Mean power', 'Share of energy drawn'].map((title) => ({ title }));
  const shown = new Set(energyRows([flow]).map(({ id }) => id));
  const rows = ENERGY_FIGURE_NAMES.flatMap((name): TableRow[] => {
    const { label, definition, unit, of } = ENERGY_FIGURES[name];
    const [id, value] = [`energy-${name}`, of(flow)];
    if (unit !== 'J' || !shown.has(id)) return [];
    const texts = [ranged(value, 'J'), ranged(value / cycleTime, 'W'), inUnit(value / drawn, '%')];
    return [{ id, label, definition, cells: texts.map((text) => ({ text })) }];
  });
  return figureTable(ungrouped(columns, rows), { kind: 'energy' });
}

/** Of the day with windings as warm as they get, as the comparison of the candidates has it. */
function yearly(candidate: SimulatedCandidate, job: Job): Markup {
  const rows = yearRows([candidate], job);
  const { days, dailyTime, energyPrice } = job.values;
  return markup`${figureTable(ungrouped([{ title: 'Value' }], rows), { kind: 'figures', meaning: 'beside' })}
<p class="words">A year has ${days} days of ${durationText(dailyTime)}; energy costs ${quantityText(energyPrice, '1/kWh')}. Losses of the amplifier are not included; terms below 0.001 % are omitted.</p>`;
}

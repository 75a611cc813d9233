import { inUnit, ranged } from '../../../shared/core/format.ts';
import { durationText } from '../../../shared/figures/timeLapseText.ts';
import type { EnergyFlow } from '../../../shared/protocol/accuracy.ts';
import type { Job } from '../../../shared/study/job.ts';
import { dayPower, yearEnergy } from '../../../shared/verdict/read.ts';
import { energyFlowChart } from '../../drawings/energyFlow.ts';
import type { Size } from '../../plot/svg/plot.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { figure, table } from '../paperParts.ts';
import { measured, tested } from './accuracySection.ts';
import { quantityIn } from './quantity.ts';

/** Lower than on the page, so that it stands below its table. */
const FLOW_SIZE: Size = { width: 640, height: 170 };

/** Share of what is drawn below which a term is left out. */
const NEGLIGIBLE = 1e-5;

const TERMS: readonly (readonly [label: string, keyof EnergyFlow])[] = [
  ['Drawn at the motor terminals', 'drawn'],
  ['Given back while braking', 'returned'],
  ['Copper', 'copper'],
  ['Iron and eddy currents', 'iron'],
  ['Guide', 'guide'],
  ['Nut and bearings', 'nut'],
  ['Other: link, mounts, buffers', 'other'],
  ['Work on the process', 'work'],
  ['Stored at the end, and rounding', 'stored'],
];

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

function energy(flow: EnergyFlow): Markup {
  const { cycleTime, drawn } = flow;
  const rows = TERMS.filter(([, name]) => Math.abs(flow[name]) > NEGLIGIBLE * drawn).map(
    ([
      label,
      name,
    ]) => markup`<tr><th scope="row">${label}</th><td>${ranged(flow[name], 'J')}</td><td>${ranged(flow[name] / cycleTime, 'W')}</td><td>${inUnit(flow[name] / drawn, '%')}</td></tr>
`,
  );
  return table('energy', ['Of one cycle', 'Energy', 'Mean power', 'Of what is drawn'], rows);
}

/** Of the day with windings as warm as they get, as the comparison of the candidates has it. */
function yearly(candidate: SimulatedCandidate, { values }: Job): Markup {
  const [power, year] = [dayPower(candidate), yearEnergy(candidate, values)];
  if (power === null || year === null)
    return markup`<p class="words">There is no cost of a year: the drive does not last the day.</p>`;
  return markup`<p class="words">With windings as warm as they get the mean power is ${ranged(power, 'W')}. In a year of ${values.days} days of ${durationText(values.dailyTime)} that is ${inUnit(year, 'kWh')}; at ${quantityIn('metric', values.energyPrice, '1/kWh')} it costs ${inUnit(year * values.energyPrice, '')} in your currency. Losses of the amplifier are not in it, and terms below 0.001 % are not in the table.</p>`;
}

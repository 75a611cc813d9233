import { inUnit, ranged, shortest } from '../../shared/format.ts';
import type { EnergyFlow } from '../../shared/study/accuracy.ts';
import type { Job } from '../../shared/study/job.ts';
import { durationText } from '../../shared/timeLapseText.ts';
import { type Markup, markup } from '../drawing/markup.ts';
import { table } from '../paper/paperParts.ts';
import { tested } from './accuracySection.ts';
import type { SimulatedLane } from './reportInput.ts';

const KILOWATT_HOUR = 3.6e6;

const TERMS: readonly (readonly [label: string, keyof EnergyFlow])[] = [
  ['Drawn from the bus', 'drawn'],
  ['Returned to the bus', 'returned'],
  ['Copper', 'copper'],
  ['Iron and eddy currents', 'iron'],
  ['Guide', 'guide'],
  ['Nut and bearings', 'nut'],
  ['Other: link, mounts, buffers', 'other'],
  ['Work on the process', 'work'],
  ['Stored at the end, and rounding', 'stored'],
];

export function energySection({ outcome }: SimulatedLane, job: Job): Markup {
  return markup`<section><h3>Energy</h3>
${tested(outcome.accuracy.energy, (flow) => energy(flow, job))}</section>`;
}

function energy(flow: EnergyFlow, { values }: Job): Markup {
  const { cycleTime, drawn, returned } = flow;
  const year = ((drawn - returned) / cycleTime) * values.dailyTime * values.days;
  const rows = TERMS.filter(([, name]) => flow[name] !== 0).map(
    ([
      label,
      name,
    ]) => markup`<tr><th scope="row">${label}</th><td>${ranged(flow[name], 'J')}</td><td>${ranged(flow[name] / cycleTime, 'W')}</td><td>${drawn === 0 ? '' : inUnit(flow[name] / drawn, '%')}</td></tr>
`,
  );
  return markup`${table('energy', ['Of one cycle', 'Energy', 'Mean power', 'Of what is drawn'], rows)}
<p class="sum">Less what is returned, a year of ${values.days} days of ${durationText(values.dailyTime)} takes ${inUnit(year / KILOWATT_HOUR, '')} kWh. At ${shortest(values.energyPrice, '1/kWh')} in your currency that costs ${inUnit(year * values.energyPrice, '')} a year.</p>`;
}

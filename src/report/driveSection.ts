import { PARAMETER_GROUPS, type ParameterName, parameterRow } from '../../shared/parameters/table.ts';
import { parameterLabel } from '../../shared/parameterWords.ts';
import { type Markup, markup, withIndices } from '../drawing/markup.ts';
import { isInUse } from '../panel/relevance.ts';
import type { LaneState } from '../study/state.ts';
import { valueIn } from './quantity.ts';

/** What a datasheet states, and what every axis needs besides a motor. */
const SHOWN = ['motor', 'magnet', 'link', 'guide', 'encoder', 'amplifier', 'heat'] as const;

/** Where a run starts, and what the job says of the room: no data of a drive. */
const OF_THE_JOB: readonly ParameterName[] = [
  'drive',
  'ambient',
  'cooling',
  'coolantTemperature',
  'windingStart',
  'carrierStart',
];

/** Which drive, and every value it is simulated with. */
export function driveSection({ title, choice, scene: { parameters: p } }: LaneState): Markup {
  const groups = SHOWN.map((id) => {
    const { title, rows } = PARAMETER_GROUPS.find((group) => group.id === id)!;
    const names = (Object.keys(rows) as ParameterName[]).filter(
      (name) => !OF_THE_JOB.includes(name) && isInUse(name, p) && p[name] !== 0,
    );
    return markup`<table class="datasheet"><thead><tr><th scope="colgroup" colspan="3">${title}</th></tr></thead>
<tbody>${names.map((name) => {
      const own = Object.hasOwn(choice.own, name) ? markup` <span class="note">(typed in)</span>` : '';
      return markup`<tr><th scope="row">${parameterLabel(name)}${own}</th><td>${withIndices(parameterRow(name).symbol)}</td><td class="value">${valueIn('metric', parameterRow(name), p[name])}</td></tr>
`;
    })}</tbody></table>
`;
  });
  return markup`<section><h3>The drive and its data</h3>
<div class="words"><p>${title}: ${motors(p.motorCount)} on one amplifier, ${provenance(choice.own)}. Values that are 0 or off are left out.</p></div>
<div class="columns">${groups}</div></section>`;
}

function motors(count: number): string {
  return count === 1
    ? 'one motor'
    : `${count} motors in parallel (constants and winding for one; currents, heat and mounting for all together)`;
}

function provenance(own: LaneState['choice']['own']): string {
  const count = Object.keys(own).length;
  if (count === 0) return 'values of an invented demonstration kit';
  return `${count} ${count === 1 ? 'value' : 'values'} typed in, the others those of an invented demonstration kit`;
}

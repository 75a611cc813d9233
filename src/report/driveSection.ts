import { PARAMETER_GROUPS, type ParameterName, parameterRow } from '../../shared/parameters/table.ts';
import { parameterLabel } from '../../shared/parameterWords.ts';
import { type Markup, markup, withIndices } from '../drawing/markup.ts';
import { isInUse } from '../panel/relevance.ts';
import { groupRow, list } from '../paper/paperParts.ts';
import type { LaneState } from '../study/state.ts';
import { laneHead } from './laneColumns.ts';
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

/** Which drives, and every value that they are simulated with, beside each other. */
export function drivesSection(lanes: readonly LaneState[]): Markup {
  const said = lanes.map(
    ({ letter, title, choice, scene }) =>
      `${letter}: ${title}, ${motors(scene.parameters.motorCount)} on one amplifier, ${provenance(choice.own)}.`,
  );
  return markup`<section><h2>The drives and their data</h2>
<div class="words">${list(said)}<p>Values that are 0 or off are left out.</p></div>
<table class="by-lane datasheet">${laneHead(['Value'], lanes)}<tbody>${SHOWN.map((id) => groupRows(id, lanes))}</tbody></table></section>`;
}

function groupRows(id: (typeof SHOWN)[number], lanes: readonly LaneState[]): Markup {
  const { title, rows } = PARAMETER_GROUPS.find((group) => group.id === id)!;
  const names = (Object.keys(rows) as ParameterName[]).filter(
    (name) => !OF_THE_JOB.includes(name) && lanes.some((lane) => hasValue(lane, name)),
  );
  return markup`${groupRow(title, lanes.length + 1)}${names.map(
    (
      name,
    ) => markup`<tr><th scope="row">${parameterLabel(name)} ${withIndices(parameterRow(name).symbol)}</th>${lanes.map((lane) => valueCell(lane, name))}</tr>
`,
  )}`;
}

function hasValue({ scene: { parameters: p } }: LaneState, name: ParameterName): boolean {
  return isInUse(name, p) && p[name] !== 0;
}

function valueCell(lane: LaneState, name: ParameterName): Markup {
  if (!hasValue(lane, name)) return markup`<td>none</td>`;
  const own = Object.hasOwn(lane.choice.own, name) ? markup` <span class="note">(typed in)</span>` : '';
  return markup`<td class="value">${valueIn('metric', parameterRow(name), lane.scene.parameters[name])}${own}</td>`;
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

import { parameterLabel } from '../../../shared/core/parameters/labels.ts';
import { PARAMETER_GROUPS, type ParameterName, parameterRow } from '../../../shared/core/parameters/table.ts';
import { isInUse } from '../../bench/relevance.ts';
import type { CandidateState } from '../../studyState/state.ts';
import { type Markup, markup, withIndices } from '../../ui/markup.ts';
import { groupRow, list } from '../paperParts.ts';
import { candidateHead } from './candidateColumns.ts';
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
export function drivesSection(candidates: readonly CandidateState[]): Markup {
  const said = candidates.map(
    ({ letter, title, choice, scene }) =>
      `${letter}: ${title}, ${motors(scene.parameters.motorCount)} on one amplifier, ${provenance(choice.own)}.`,
  );
  return markup`<section><h2>The drives and their data</h2>
<div class="words">${list(said)}<p>Values that are 0 or off are left out.</p></div>
<table class="by-candidate datasheet">${candidateHead(['Value'], candidates)}<tbody>${SHOWN.map((id) => groupRows(id, candidates))}</tbody></table></section>`;
}

function groupRows(id: (typeof SHOWN)[number], candidates: readonly CandidateState[]): Markup {
  const { title, rows } = PARAMETER_GROUPS.find((group) => group.id === id)!;
  const names = (Object.keys(rows) as ParameterName[]).filter(
    (name) => !OF_THE_JOB.includes(name) && candidates.some((candidate) => hasValue(candidate, name)),
  );
  return markup`${groupRow(title, candidates.length + 1)}${names.map(
    (
      name,
    ) => markup`<tr><th scope="row">${parameterLabel(name)} ${withIndices(parameterRow(name).symbol)}</th>${candidates.map((candidate) => valueCell(candidate, name))}</tr>
`,
  )}`;
}

function hasValue({ scene: { parameters: p } }: CandidateState, name: ParameterName): boolean {
  return isInUse(name, p) && p[name] !== 0;
}

function valueCell(candidate: CandidateState, name: ParameterName): Markup {
  if (!hasValue(candidate, name)) return markup`<td>none</td>`;
  const own = Object.hasOwn(candidate.choice.own, name) ? markup` <span class="note">(typed in)</span>` : '';
  return markup`<td class="value">${valueIn('metric', parameterRow(name), candidate.scene.parameters[name])}${own}</td>`;
}

function motors(count: number): string {
  return count === 1
    ? 'one motor'
    : `${count} motors in parallel (constants and winding for one; currents, heat and mounting for all together)`;
}

function provenance(own: CandidateState['choice']['own']): string {
  const count = Object.keys(own).length;
  if (count === 0) return 'values of an invented demonstration preset';
  return `${count} ${count === 1 ? 'value' : 'values'} typed in, the others those of an invented demonstration preset`;
}

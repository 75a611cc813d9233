import { isInUse } from '../../../shared/axis/inUse.ts';
import { parameterLabel } from '../../../shared/core/parameters/labels.ts';
import { PARAMETER_GROUPS, type ParameterName, parameterRow } from '../../../shared/core/parameters/table.ts';
import type { CandidateState } from '../../studyState/state.ts';
import type { TableRow } from '../../studyState/tables/table.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { list } from '../paperParts.ts';
import { figureTable } from './figureTable.ts';
import { rowValueText } from './quantity.ts';

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

/** Where along the track a ripple or a cogging term begins is in the study, but on no datasheet. */
const PHASE = /Phase$/;

/** A datasheet states no more; the study, which the report carries, has every digit. */
const DATASHEET_DIGITS = 4;

/** Which drives, and the values of a datasheet that they are simulated with, beside each other. */
export function drivesSection(candidates: readonly CandidateState[]): Markup {
  const said = candidates.map(
    ({ letter, title, choice, scene }) =>
      `${letter}: ${title}, ${motors(scene.parameters.motorCount)} on one amplifier, ${provenance(choice.own)}.`,
  );
  const groups = SHOWN.flatMap((shown) =>
    PARAMETER_GROUPS.filter(({ id }) => id === shown).map(({ title, rows }) => ({
      title,
      rows: parameterRows(Object.keys(rows) as ParameterName[], candidates),
    })),
  );
  return markup`<section><h2>The drives and their data</h2>
<div class="words">${list(said)}<p>Values that are 0 or off are omitted, and so are the phases of ripple and cogging along the track.</p></div>
${figureTable({ columns: candidates, groups }, { kind: 'by-candidate datasheet', head: 'Value' })}</section>`;
}

function parameterRows(names: readonly ParameterName[], candidates: readonly CandidateState[]): TableRow[] {
  return names
    .filter((name) => !OF_THE_JOB.includes(name) && !PHASE.test(name))
    .filter((name) => candidates.some((candidate) => hasValue(candidate, name)))
    .map((name) => ({
      id: name,
      label: `${parameterLabel(name)} ${parameterRow(name).symbol}`,
      definition: '',
      cells: candidates.map((candidate) => ({ text: valueText(candidate, name) })),
    }));
}

function hasValue({ scene: { parameters: p } }: CandidateState, name: ParameterName): boolean {
  return isInUse(name, p) && p[name] !== 0;
}

function valueText(candidate: CandidateState, name: ParameterName): string {
  if (!hasValue(candidate, name)) return 'none';
  const value = candidate.scene.parameters[name];
  return Object.hasOwn(candidate.choice.own, name)
    ? `${rowValueText(parameterRow(name), value)} (typed in)`
    : rowValueText(parameterRow(name), value, DATASHEET_DIGITS);
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

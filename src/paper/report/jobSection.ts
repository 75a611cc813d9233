import type { Row } from '../../../shared/core/parameters/row.ts';
import type { UnitSystem } from '../../../shared/core/units.ts';
import { isAsked } from '../../../shared/study/isAsked.ts';
import { type Job, type JobEntry, jobRow } from '../../../shared/study/job.ts';
import { jobLabel } from '../../../shared/study/jobLabels.ts';
import { JOB_GROUPS } from '../../../shared/study/jobRows.ts';
import { jobSentence } from '../../../shared/study/jobSentence.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { groupRow, quantityRow, table } from '../paperParts.ts';
import { quantityIn, valueIn } from './quantity.ts';

const COLUMNS = ['What is asked', 'Symbol', 'Value', 'Meaning'];

/** What is asked, in one sentence and entry by entry. */
export function jobSection(job: Job, units: UnitSystem): Markup {
  const rows = JOB_GROUPS.flatMap(({ title, rows }) => {
    const asked = Object.keys(rows).filter((name) => isAsked(name as JobEntry, job)) as JobEntry[];
    return [groupRow(title, COLUMNS.length), ...asked.map((name) => entryRow(name, job, units))];
  });
  return markup`<section><h2>The job</h2>
<p class="words">${jobSentence(job, units)}${units === 'inch' ? ' The figures of the candidates are in SI units throughout.' : ''}</p>
${table('quantities job', COLUMNS, rows)}
${job.values.motion === 'move list' ? moveTable(job, units) : ''}</section>`;
}

function entryRow(name: JobEntry, { values }: Job, units: UnitSystem): Markup {
  const row: Row = jobRow(name);
  return quantityRow(jobLabel(name), row.symbol, valueIn(units, row, values[name]), row.meaning);
}

function moveTable({ moves }: Job, units: UnitSystem): Markup {
  const rows = moves.map(
    ({ to, speed, acceleration, jerk, dwell }, k) => markup`<tr><th scope="row">${k + 1}</th>
<td>${quantityIn(units, to, 'mm')}</td><td>${quantityIn(units, speed, 'm/s')}</td><td>${quantityIn(units, acceleration, 'm/s²')}</td><td>${quantityIn(units, jerk, 'm/s³')}</td><td>${quantityIn(units, dwell, 'ms')}</td></tr>
`,
  );
  return markup`<h3>Moves of the list</h3>
${table('moves', ['Move', 'To', 'Speed', 'Acceleration', 'Jerk', 'Rest'], rows)}`;
}

import type { Row } from '../../../shared/core/parameters/row.ts';
import type { UnitSystem } from '../../../shared/core/unitSystem.ts';
import { isAsked } from '../../../shared/study/isAsked.ts';
import { type Job, type JobEntry, jobRow } from '../../../shared/study/job.ts';
import { jobLabel } from '../../../shared/study/jobLabels.ts';
import { JOB_GROUPS } from '../../../shared/study/jobRows.ts';
import { jobSentence } from '../../../shared/study/jobSentence.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { groupRow, quantityRow, table } from '../paperParts.ts';
import { quantityText, rowValueText } from './quantity.ts';

const COLUMNS = ['What is asked', 'Symbol', 'Value', 'Meaning'];

/** What is asked, in one sentence and entry by entry. */
export function jobSection(job: Job, units: UnitSystem): Markup {
  const rows = JOB_GROUPS.flatMap(({ title, rows }) => {
    const asked = Object.keys(rows).filter((name) => isAsked(name as JobEntry, job)) as JobEntry[];
    return [groupRow(title, COLUMNS.length), ...asked.map((name) => entryRow(name, job))];
  });
  return markup`<section><h2>The job</h2>
<p class="words">${jobSentence(job, units)}</p>
${table('quantities job', COLUMNS, rows)}
${job.values.motion === 'move list' ? moveTable(job) : ''}</section>`;
}

function entryRow(name: JobEntry, { values }: Job): Markup {
  const row: Row = jobRow(name);
  return quantityRow(jobLabel(name), row.symbol, rowValueText(row, values[name]), row.meaning);
}

function moveTable({ moves }: Job): Markup {
  const rows = moves.map(
    ({ to, speed, acceleration, jerk, dwell }, k) => markup`<tr><th scope="row">${k + 1}</th>
<td>${quantityText(to, 'mm')}</td><td>${quantityText(speed, 'm/s')}</td><td>${quantityText(acceleration, 'm/s²')}</td><td>${quantityText(jerk, 'm/s³')}</td><td>${quantityText(dwell, 'ms')}</td></tr>
`,
  );
  return markup`<h3>Moves of the list</h3>
${table('moves', ['Move', 'To', 'Speed', 'Acceleration', 'Jerk', 'Rest'], rows)}`;
}

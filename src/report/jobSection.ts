import type { Row } from '../../shared/parameters/row.ts';
import { type Job, type JobEntry, jobRow } from '../../shared/study/job.ts';
import { jobLabel } from '../../shared/study/jobWords.ts';
import { JOB_GROUPS } from '../../shared/study/rows.ts';
import { durationText } from '../../shared/timeLapseText.ts';
import type { UnitSystem } from '../../shared/units.ts';
import { type Markup, markup } from '../drawing/markup.ts';
import { quantityRow, table } from '../paper/paperParts.ts';
import { isAsked } from './isAsked.ts';
import { quantityIn, valueIn } from './quantity.ts';

/** What is asked, in one sentence and entry by entry. */
export function jobSection(job: Job, units: UnitSystem): Markup {
  const rows = JOB_GROUPS.flatMap(({ title, rows }) => {
    const asked = Object.keys(rows).filter((name) => isAsked(name as JobEntry, job)) as JobEntry[];
    return [groupRow(title), ...asked.map((name) => entryRow(name, job, units))];
  });
  return markup`<section><h2>The job</h2>
<div class="words"><p>${jobSentence(job, units)}</p></div>
${table('quantities', ['What is asked', 'Symbol', 'Value', 'Meaning'], rows)}
${job.values.motion === 'move list' ? moveTable(job, units) : ''}</section>`;
}

/** What the axis has to do, over and over, and how well. */
export function jobSentence({ values: v, moves }: Job, units: UnitSystem): string {
  const q = (name: JobEntry) => valueIn(units, jobRow(name), v[name]);
  const motion =
    v.motion === 'move list'
      ? `through a list of ${moves.length} moves`
      : `${q('stroke')} forth and back, each way in ${q('moveTime')}${v.dwell > 0 ? ` with a rest of ${q('dwell')}` : ''}`;
  const rise = v.inclination === 0 ? '' : `, on an axis that rises by ${q('inclination')}`;
  const process =
    v.process === 'none' ? '' : `, against a process force of ${q('processForce')} (${v.process})`;
  const load =
    v.payload > 0 ? `${q('payload')} on a table of ${q('tableMass')}` : `an empty table of ${q('tableMass')}`;
  return `Carry ${load} ${motion}${rise}${process}, ${durationText(v.dailyTime)} a day; arrived is what stays within ±${q('window')}.`;
}

function groupRow(title: string): Markup {
  return markup`<tr class="group"><th scope="rowgroup" colspan="4">${title}</th></tr>
`;
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

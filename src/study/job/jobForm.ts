import type { UnitSystem } from '../../../shared/core/units.ts';
import { checkJob } from '../../../shared/study/checkJob.ts';
import { isAsked } from '../../../shared/study/isAsked.ts';
import {
  defaultJobValues,
  JOB_ENTRIES,
  type Job,
  type JobEntry,
  type JobValues,
  jobRow,
} from '../../../shared/study/job.ts';
import { jobLabel } from '../../../shared/study/jobLabels.ts';
import { JOB_GROUPS } from '../../../shared/study/jobRows.ts';
import type { StudyActions, StudyState } from '../../studyState/state.ts';
import { element } from '../../ui/dom.ts';
import { createRowField, type RowField } from './rowField.ts';

export interface JobForm {
  readonly element: HTMLElement;
  show(state: StudyState): void;
  /** What is asked for with what waits to become legal. */
  readonly wanted: JobValues;
}

type Values = Partial<JobValues>;

/**
 * The values of a job in their groups. A value that is legal by itself but not beside the others waits in its field, with its problem
 * beside it, until another change makes it legal.
 */
export function createJobForm(actions: StudyActions, onFold: () => void): JobForm {
  let job: Job = { title: '', values: defaultJobValues(), moves: [] };
  let system: UnitSystem;
  let waiting: Values = {};
  const fields = Object.fromEntries(
    JOB_ENTRIES.map((name) => [
      name,
      createRowField(jobRow(name), {
        id: `job-${name}`,
        text: jobLabel(name),
        onValue: (value) => take(name, value as never),
      }),
    ]),
  ) as Record<JobEntry, RowField>;

  const wanted = (changes: Values = waiting): Job => ({ ...job, values: { ...job.values, ...changes } });

  function take<N extends JobEntry>(name: N, value: JobValues[N]): void {
    const { [name]: _before, ...others } = waiting;
    if (value === job.values[name]) {
      waiting = others as Values;
      fields[name].show(value, system);
    } else if (propose(name, { ...others, [name]: value }, {}) !== null) {
      const wrong = propose(name, { [name]: value } as Values, others as Values);
      if (wrong !== null) {
        waiting = { ...waiting, [name]: value };
        fields[name].showProblem(wrong);
      }
    }
    fold();
  }

  /** Asks for the changes; returns what is wrong with them, in words for beside `name`, or null. What is left waiting then waits on. */
  function propose(name: JobEntry, changes: Values, left: Values): string | null {
    const wrong = problemOf(name, changes);
    if (wrong !== null) return wrong;
    const before = waiting;
    waiting = left;
    const refused = actions.changeJob(changes);
    if (refused !== null) waiting = before;
    return refused;
  }

  function problemOf(name: JobEntry, changes: Values): string | null {
    const { problems } = checkJob(wanted(changes), system);
    const problem = problems.find(({ field }) => field === name) ?? problems[0];
    return problem ? capitalised(problem.message.replace(`${jobLabel(name)}: `, '')) : null;
  }

  function fold(): void {
    for (const name of JOB_ENTRIES) fields[name].element.hidden = !isAsked(name, wanted());
    onFold();
  }

  return {
    element: element(
      'div',
      { class: 'job-groups' },
      ...JOB_GROUPS.map(({ id, title, rows }) =>
        element(
          'section',
          { class: 'job-group', 'aria-labelledby': `job-group-${id}` },
          element('h3', { id: `job-group-${id}` }, title),
          ...(Object.keys(rows) as JobEntry[]).map((name) => fields[name].element),
        ),
      ),
    ),
    show({ study, units }) {
      const isOther = job.title !== study.job.title && job.values !== study.job.values;
      if (isOther) waiting = {};
      job = study.job;
      system = units;
      for (const name of JOB_ENTRIES) {
        if (waiting[name] === job.values[name]) delete waiting[name];
        if (!(name in waiting)) fields[name].show(job.values[name], units);
        else fields[name].showProblem(problemOf(name, { [name]: waiting[name] } as Values));
      }
      fold();
    },
    get wanted() {
      return wanted().values;
    },
  };
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

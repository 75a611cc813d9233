import { rowIn } from '../../../shared/core/parameters/row.ts';
import { problemText } from '../../../shared/core/problem.ts';
import { onPage, sentenceText } from '../../../shared/core/sentence.ts';
import type { UnitSystem } from '../../../shared/core/unitSystem.ts';
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
import { jobLabel, yearsText } from '../../../shared/study/jobLabels.ts';
import { JOB_GROUPS } from '../../../shared/study/jobRows.ts';
import type { StudyActions, StudyState } from '../../studyState/state.ts';
import { element, setText } from '../../ui/dom.ts';
import { Field } from '../../ui/fields/field.ts';

type Values = Partial<JobValues>;

/** What a job may leave open. */
const OPEN: readonly JobEntry[] = ['smallestStep', 'rippleLimit', 'growthLimit', 'wear'];

/**
 * The values of a job in their groups. A value that is legal by itself but not beside the others waits in its field, with its problem
 * beside it, until another change makes it legal.
 */
export class JobForm {
  readonly element: HTMLElement;
  readonly #actions: StudyActions;
  readonly #onFold: () => void;
  readonly #fields: Readonly<Record<JobEntry, Field>>;
  /** What decides, while its fields are folded away. */
  readonly #decides = element('span');
  #job: Job = { title: '', values: defaultJobValues(), moves: [] };
  #system: UnitSystem = 'metric';
  #waiting: Values = {};

  /** `onFold` is called when fields have come or gone. */
  constructor(actions: StudyActions, onFold: () => void) {
    this.#actions = actions;
    this.#onFold = onFold;
    this.#fields = Object.fromEntries(JOB_ENTRIES.map((name) => [name, this.#createField(name)])) as Record<
      JobEntry,
      Field
    >;
    this.element = element(
      'div',
      { class: 'job-groups' },
      ...JOB_GROUPS.map(({ id, title, rows }) => {
        const fields = (Object.keys(rows) as JobEntry[]).map((name) => this.#fields[name].element);
        return id === 'choice'
          ? element(
              'details',
              { class: 'job-choice' },
              element('summary', {}, element('h3', {}, title), this.#decides),
              element('div', { class: 'job-group' }, ...fields),
            )
          : element(
              'section',
              { class: 'job-group', 'aria-labelledby': `job-group-${id}` },
              element('h3', { id: `job-group-${id}` }, title),
              ...fields,
            );
      }),
    );
    // Whatever marks a field as refused, or no longer so.
    new MutationObserver(() => actions.setRefused(this.#refused)).observe(this.element, {
      subtree: true,
      attributes: true,
      attributeFilter: ['aria-invalid'],
    });
  }

  get #refused(): string[] {
    return JOB_ENTRIES.filter(
      (name) => this.#fields[name].hasProblem && !this.#fields[name].element.hidden,
    ).map(jobLabel);
  }

  /** What is asked for with what waits to become legal. */
  get wanted(): JobValues {
    return this.#with(this.#waiting).values;
  }

  show({ study, units }: StudyState): void {
    const isOther = this.#job.title !== study.job.title && this.#job.values !== study.job.values;
    if (isOther) this.#waiting = {};
    this.#job = study.job;
    this.#system = units;
    const { values } = study.job;
    setText(this.#decides, decidesText(values));
    for (const name of JOB_ENTRIES) {
      if (this.#waiting[name] === values[name]) delete this.#waiting[name];
      if (name in this.#waiting)
        this.#fields[name].showProblem(this.#problemOf(name, { [name]: this.#waiting[name] }));
      else this.#showField(name, values[name]);
    }
    this.#fold();
  }

  #createField(name: JobEntry): Field {
    const row = jobRow(name);
    return new Field(row, {
      id: `job-${name}`,
      label: jobLabel(name),
      symbol: row.symbol,
      ...(OPEN.includes(name) && { zeroText: 'not asked' }),
      onValue: (value) => this.#take(name, value as JobValues[typeof name]),
    });
  }

  #showField(name: JobEntry, value: JobValues[JobEntry]): void {
    this.#fields[name].show(value, rowIn(this.#system, jobRow(name)));
  }

  #take(name: JobEntry, value: JobValues[JobEntry]): void {
    const { [name]: _before, ...others } = this.#waiting;
    if (value === this.#job.values[name]) {
      this.#waiting = others;
      this.#showField(name, value);
    } else if (this.#propose(name, { ...others, [name]: value }, {}) !== null) {
      const problem = this.#propose(name, { [name]: value }, others);
      if (problem !== null) {
        this.#waiting = { ...this.#waiting, [name]: value };
        this.#fields[name].showProblem(problem);
      }
    }
    this.#fold();
  }

  /** Asks for the changes; returns what is wrong with them, in words for beside `name`, or null. What is left waiting then waits on. */
  #propose(name: JobEntry, changes: Values, left: Values): string | null {
    const problem = this.#problemOf(name, changes);
    if (problem !== null) return problem;
    const before = this.#waiting;
    this.#waiting = left;
    const refused = this.#actions.changeJob(changes);
    if (refused !== null) this.#waiting = before;
    return refused;
  }

  #problemOf(name: JobEntry, changes: Values): string | null {
    const { problems } = checkJob(this.#with(changes));
    const own = problems.find(({ field }) => field === name);
    if (own) return capitalised(sentenceText(own.message, onPage(this.#system)));
    const [other] = problems;
    return other ? problemText(other, onPage(this.#system)) : null;
  }

  #with(changes: Values): Job {
    return { ...this.#job, values: { ...this.#job.values, ...changes } };
  }

  #fold(): void {
    const wanted = this.#with(this.#waiting);
    for (const name of JOB_ENTRIES) this.#fields[name].element.hidden = !isAsked(name, wanted);
    this.#onFold();
  }
}

/** 'total cost over 5 years; drives comparable by continuous force' */
function decidesText({ decidedBy, years, comparableBy }: JobValues): string {
  const over = `over ${yearsText(years)}`;
  const first = decidedBy === 'total cost' ? `${decidedBy} ${over}` : `${decidedBy}, then total cost ${over}`;
  return `${first}; drives comparable by ${comparableBy}`;
}

function capitalised(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

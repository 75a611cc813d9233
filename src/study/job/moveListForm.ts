import type { Travel } from '../../../shared/core/crossChecks.ts';
import { problemTexts } from '../../../shared/core/problem.ts';
import type { MoveLine } from '../../../shared/core/scene.ts';
import { onPage } from '../../../shared/core/sentence.ts';
import type { UnitSystem } from '../../../shared/core/unitSystem.ts';
import type { Job } from '../../../shared/study/job.ts';
import { linesOf } from '../../../shared/study/jobMotion.ts';
import { ANYWHERE, travelOf } from '../../../shared/study/jobRules.ts';
import { type MotionAsked, motionAsked } from '../../../shared/study/motionAsked.ts';
import { readMoveList, writeTimedMoveList } from '../../../shared/study/moveList.ts';
import type { StudyActions, StudyState } from '../../studyState/state.ts';
import { button, element } from '../../ui/dom.ts';
import { ProblemList } from '../../ui/problemList.ts';
import { moveTable } from './moveTable.ts';

const HELP =
  'One move per line, columns separated by tab, semicolon or comma, as a spreadsheet copies them: “to [mm], time [s], dwell [s]”, or ' +
  'with speed, acceleration and jerk in place of the time; in, in/s, … are accepted as well. A column “force [N]” gives the force with which the process works ' +
  'against each move: a cut has one, a rapid move has 0. Positions are measured from the middle of the ' +
  'travel. The list is repeated.';

/** A move list as text, typed or pasted from a spreadsheet, and what was understood of it. */
export class MoveListForm {
  readonly element: HTMLElement;
  readonly #actions: StudyActions;
  readonly #onType: () => void;
  readonly #problems = new ProblemList('job-moves-problems');
  readonly #text = element('textarea', {
    id: 'job-moves',
    rows: 6,
    spellcheck: 'false',
    'aria-describedby': `job-moves-help ${this.#problems.element.id}`,
    oninput: () => {
      this.#isEdited = true;
      this.#understand();
    },
  });
  readonly #understood = element('div', {
    class: 'move-table-frame',
    tabindex: 0,
    role: 'region',
    'aria-label': 'What was understood',
  });
  readonly #use = button('Use this list', () => this.#take(), { class: 'primary' });
  readonly #centre = button('Centre it on the travel', () => this.#shift(), {
    title: 'Positions of a job are measured from the middle of the travel',
  });
  /** With the travel that is asked for at present. */
  #job: Job | null = null;
  #units: UnitSystem = 'metric';
  /** What the text was last written from; while it is edited it stays as it is. */
  #written: { readonly moves: readonly MoveLine[]; readonly units: UnitSystem } | null = null;
  #isEdited = false;
  /** The list that comes now is the text as it stands. */
  #isTaken = false;
  #typed: MotionAsked | null = null;

  /** `onType` is called when another motion is typed. */
  constructor(actions: StudyActions, onType: () => void) {
    this.#actions = actions;
    this.#onType = onType;
    this.element = element(
      'div',
      { class: 'move-list-form' },
      element('label', { for: this.#text.id }, 'Move list'),
      element('p', { id: 'job-moves-help', class: 'job-words' }, HELP),
      this.#text,
      this.#problems.element,
      element('div', { class: 'dialog-ways' }, this.#use, this.#centre),
      this.#understood,
    );
  }

  /** The motion of the list as it is typed, if it can be understood. */
  get typed(): MotionAsked | null {
    return this.#typed;
  }

  /** `travel` is what is asked for at present, m. */
  show({ study, units }: StudyState, travel: number): void {
    const job = { ...study.job, values: { ...study.job.values, travel } };
    const { moves } = job;
    const isOther = this.#written === null || !sameMoves(this.#written.moves, moves);
    const isStale = moves.length === 0 || this.#written?.units !== units;
    this.#job = job;
    this.#units = units;
    if (this.#isTaken) this.#written = { moves, units };
    else if (isOther || (isStale && !this.#isEdited)) {
      this.#isEdited = false;
      this.#written = { moves, units };
      this.#text.value = writeTimedMoveList(moves.length > 0 ? moves : linesOf(job), units);
    }
    this.#understand();
  }

  #read(travel: Travel) {
    return readMoveList(this.#text.value, travel);
  }

  /** Reads the text and says what it means, without using it. */
  #understand(): void {
    const job = this.#job;
    if (!job) return;
    const found = this.#read(travelOf(job.values));
    const anywhere = this.#read(ANYWHERE);
    const isLegal = 'moves' in found;
    const isList = job.values.motion === 'move list';
    this.#problems.show(isLegal ? [] : problemTexts(found.problems, onPage(this.#units)));
    this.#typed = isLegal
      ? motionAsked({ ...job, moves: found.moves, values: { ...job.values, motion: 'move list' } })
      : null;
    this.#understood.replaceChildren(...(this.#typed ? [moveTable(this.#typed, this.#units)] : []));
    this.#understood.hidden = this.#typed === null;
    this.#use.disabled = !isLegal || (!this.#isEdited && isList);
    this.#centre.hidden = isLegal || !('moves' in anywhere) || spanOf(anywhere.moves) > job.values.travel;
    this.#onType();
  }

  #take(): void {
    if (!this.#job) return;
    const found = this.#read(travelOf(this.#job.values));
    if (!('moves' in found)) return;
    this.#isEdited = false;
    this.#isTaken = true;
    const problem = this.#actions.useMoves(found.moves);
    this.#isTaken = false;
    if (problem !== null) {
      this.#isEdited = true;
      this.#problems.show([problem]);
    }
  }

  #shift(): void {
    const found = this.#read(ANYWHERE);
    if (!('moves' in found)) return;
    const ends = found.moves.map(({ to }) => to);
    const middle = (Math.max(...ends) + Math.min(...ends)) / 2;
    this.#text.value = writeTimedMoveList(
      found.moves.map((line) => ({ ...line, to: line.to - middle })),
      this.#units,
    );
    this.#isEdited = true;
    this.#understand();
    this.#text.focus();
  }
}

function sameMoves(a: readonly MoveLine[], b: readonly MoveLine[]): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function spanOf(moves: readonly MoveLine[]): number {
  const ends = moves.map(({ to }) => to);
  return Math.max(...ends) - Math.min(...ends);
}

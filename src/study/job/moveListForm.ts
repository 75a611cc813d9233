import { problemTexts } from '../../../shared/core/problem.ts';
import type { MoveLine } from '../../../shared/core/scene.ts';
import { onPage } from '../../../shared/core/sentence.ts';
import type { UnitSystem } from '../../../shared/core/units.ts';
import type { Job } from '../../../shared/study/job.ts';
import { linesOf } from '../../../shared/study/jobMotion.ts';
import { ANYWHERE, travelOf } from '../../../shared/study/jobRules.ts';
import { type MotionAsked, motionAsked } from '../../../shared/study/motionAsked.ts';
import { readMoveList, writeTimedMoveList } from '../../../shared/study/moveList.ts';
import type { StudyActions, StudyState } from '../../studyState/state.ts';
import { button, element } from '../../ui/dom.ts';
import { moveTable } from './moveTable.ts';

export interface MoveListForm {
  readonly element: HTMLElement;
  /** `travel` is what is asked for at present, m. */
  show(state: StudyState, travel: number): void;
  /** The motion of the list as it is typed, if it can be understood. */
  readonly typed: MotionAsked | null;
}

/** A move list as text, typed or pasted from a spreadsheet, and what was understood of it. */
export function createMoveListForm(actions: StudyActions, onType: () => void): MoveListForm {
  let job: Job | null = null;
  let units: UnitSystem = 'metric';
  /** What the text was last written from; while it is edited it stays as it is. */
  let written: { readonly moves: readonly MoveLine[]; readonly units: UnitSystem } | null = null;
  let isEdited = false;
  /** The list that comes now is the text as it stands. */
  let isTaken = false;
  let typed: MotionAsked | null = null;

  const text = element('textarea', {
    id: 'job-moves',
    rows: 6,
    spellcheck: 'false',
    'aria-describedby': 'job-moves-help job-moves-problems',
    oninput: () => {
      isEdited = true;
      understand();
    },
  });
  const problems = element('ul', { id: 'job-moves-problems', class: 'dialog-problems', role: 'alert' });
  const understood = element('div', {
    class: 'move-table-frame',
    tabindex: 0,
    role: 'region',
    'aria-label': 'What was understood',
  });
  const use = button('Use this list', () => take(), { class: 'primary' });
  const centre = button('Shift it into the middle of the travel', () => shift(), {
    title: 'Positions of a job count from the middle of the travel',
  });

  function read(travel: { travelMin: number; travelMax: number }) {
    return readMoveList(text.value, travel);
  }

  /** Reads the text and says what it means, without using it. */
  function understand(): void {
    if (!job) return;
    const found = read(travelOf(job.values));
    const anywhere = read(ANYWHERE);
    const messages = 'problems' in found ? problemTexts(found.problems, onPage(units)) : [];
    problems.replaceChildren(...messages.map((message) => element('li', {}, message)));
    typed = 'moves' in found ? motionOf(found.moves) : null;
    understood.replaceChildren(...(typed ? [moveTable(typed, units)] : []));
    understood.hidden = typed === null;
    use.disabled = !('moves' in found) || (!isEdited && job.values.motion === 'move list');
    centre.hidden = 'moves' in found || !('moves' in anywhere) || spanOf(anywhere.moves) > job.values.travel;
    onType();
  }

  function motionOf(moves: readonly MoveLine[]): MotionAsked {
    return motionAsked({ ...job!, moves, values: { ...job!.values, motion: 'move list' } });
  }

  function take(): void {
    const found = read(travelOf(job!.values));
    if (!('moves' in found)) return;
    isEdited = false;
    isTaken = true;
    const wrong = actions.useMoves(found.moves);
    isTaken = false;
    if (wrong !== null) {
      isEdited = true;
      problems.replaceChildren(element('li', {}, wrong));
    }
  }

  function shift(): void {
    const found = read(ANYWHERE);
    if (!('moves' in found)) return;
    const ends = found.moves.map(({ to }) => to);
    const middle = (Math.max(...ends) + Math.min(...ends)) / 2;
    text.value = writeTimedMoveList(
      found.moves.map((line) => ({ ...line, to: line.to - middle })),
      units,
    );
    isEdited = true;
    understand();
    text.focus();
  }

  return {
    element: element(
      'div',
      { class: 'move-list-form' },
      element('label', { for: 'job-moves' }, 'Move list'),
      element(
        'p',
        { id: 'job-moves-help', class: 'job-words' },
        'One move a line, columns parted by tab, semicolon or comma, as a spreadsheet copies them: “to [mm], time [s], dwell [s]”, or ' +
          'with speed, acceleration and jerk in place of the time; in, in/s, … are understood as well. Positions count from the ' +
          'middle of the travel. The list is gone through over and over.',
      ),
      text,
      problems,
      element('div', { class: 'dialog-ways' }, use, centre),
      understood,
    ),
    show({ study, units: system }, travel) {
      job = { ...study.job, values: { ...study.job.values, travel } };
      units = system;
      const { moves } = job;
      const isOther = written === null || !sameMoves(written.moves, moves);
      const isStale = moves.length === 0 || written?.units !== units;
      if (isTaken) written = { moves, units };
      else if (isOther || (isStale && !isEdited)) {
        isEdited = false;
        written = { moves, units };
        text.value = writeTimedMoveList(moves.length > 0 ? moves : linesOf(job), units);
      }
      understand();
    },
    get typed() {
      return typed;
    },
  };
}

function sameMoves(a: readonly MoveLine[], b: readonly MoveLine[]): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

function spanOf(moves: readonly MoveLine[]): number {
  const ends = moves.map(({ to }) => to);
  return Math.max(...ends) - Math.min(...ends);
}

import type { Problem } from '../../shared/core/problem.ts';
import { element } from './dom.ts';

/** What is wrong with what was entered in a dialog, one line each; spoken when it appears. */
export class ProblemList {
  readonly element: HTMLElement;

  constructor(id?: string) {
    this.element = element('ul', { id, class: 'dialog-problems', role: 'alert' });
  }

  show(problems: readonly Pick<Problem, 'message'>[]): void {
    this.element.replaceChildren(...problems.map(({ message }) => element('li', {}, message)));
  }
}

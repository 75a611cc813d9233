import { element } from './dom.ts';

/** What is wrong with what was entered in a dialog, one line each; spoken when it appears. */
export class ProblemList {
  readonly element: HTMLElement;

  constructor(id?: string) {
    this.element = element('ul', { id, class: 'dialog-problems', role: 'alert' });
  }

  show(problems: readonly string[]): void {
    this.element.replaceChildren(...problems.map((problem) => element('li', {}, problem)));
  }
}

import type { PretuneGoal, TuningPoint, TuningSoFar } from '../../../shared/protocol/pretune.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { pointText } from './pretuneText.ts';

/** Makes a tuning live; returns what is wrong, or null. */
type Use = (goal: PretuneGoal, point: TuningPoint) => string | null;

/** The best tuning so far while better ones are sought: its figures are those of a run, so it can be used at once. */
export class SoFar {
  readonly element: HTMLElement;
  readonly #text = element('p', {});
  readonly #note = element('p', { role: 'status' });
  #shown: { readonly goal: PretuneGoal; readonly point: TuningPoint } | null = null;

  constructor(use: Use) {
    const useIt = button('Make it live', () => {
      if (!this.#shown) return;
      const { goal, point } = this.#shown;
      setText(this.#note, use(goal, point) ?? `Live now: ${point.label}. The search goes on.`);
    });
    this.element = element('div', { class: 'pretune-so-far', hidden: true }, this.#text, useIt, this.#note);
  }

  show(goal: PretuneGoal, soFar: TuningSoFar | null): void {
    if (!soFar) return;
    this.#shown = { goal, point: soFar.point };
    setText(this.#text, `Best so far: ${pointText(soFar, soFar.point)}.`);
    this.element.hidden = false;
  }

  hide(): void {
    this.#shown = null;
    setText(this.#note, '');
    this.element.hidden = true;
  }
}

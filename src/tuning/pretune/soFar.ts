import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { PretuneGoal, PretuneProgress } from '../../../shared/protocol/pretune.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { foreseenText, pointText } from './pretuneText.ts';

/** A tuning that can be used. */
interface Offer {
  readonly goal: PretuneGoal;
  readonly label: string;
  readonly changes: ParameterChanges;
}

/** Makes a tuning live; returns what is wrong, or null. */
type Use = (offer: Offer) => string | null;

/** The best tuning so far while better ones are sought: foreseen by the linear analysis at first, then out of runs. It can be used at once. */
export class SoFar {
  readonly element: HTMLElement;
  readonly #text = element('p', {});
  readonly #note = element('p', { role: 'status' });
  #offer: Offer | null = null;
  #goesOn = true;

  constructor(use: Use) {
    const useIt = button('Make it live', () => {
      const offer = this.#offer;
      if (!offer) return;
      const outlook = this.#goesOn ? ' The search goes on.' : '';
      setText(this.#note, use(offer) ?? `Live now: ${offer.label}.${outlook}`);
    });
    this.element = element('div', { class: 'pretune-so-far', hidden: true }, this.#text, useIt, this.#note);
  }

  show(goal: PretuneGoal, { soFar, foreseen }: PretuneProgress): void {
    const best = soFar?.point ?? foreseen;
    if (!best) return;
    const { label, changes } = best;
    this.#offer = { goal, label, changes };
    const text = soFar
      ? `Best so far: ${pointText(soFar, soFar.point)}.`
      : `First answer, from the linear analysis; no move has been run with it yet, and the search for better ones goes on. ${foreseen ? foreseenText(foreseen) : ''}`;
    setText(this.#text, text);
    this.element.hidden = false;
  }

  /** The search is over before its end: what it has found so far stays on offer. Returns whether it has found anything. */
  stop(): boolean {
    this.#goesOn = false;
    return this.#offer !== null;
  }

  hide(): void {
    this.#offer = null;
    this.#goesOn = true;
    setText(this.#note, '');
    this.element.hidden = true;
  }
}

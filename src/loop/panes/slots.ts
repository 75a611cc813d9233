import { lineSample } from '../../plot/lineSample.ts';
import type { ResponseSpec } from '../../plot/loop/responses.ts';
import { element } from '../../ui/dom.ts';
import { createSegmented } from '../../ui/segmented.ts';
import { type Arrangement, arrangementFor, type PaneName, type Slot } from './arrangement.ts';
import type { Pane } from './pane.ts';

/**
 * Puts the panes where there is room for them; where several share a place, a row of options
 * chooses one.
 */
export class Slots {
  readonly element = element('div', { class: 'loop-slots' });
  readonly #panes: Readonly<Record<PaneName, Pane>>;
  readonly #onChange: () => void;
  #arrangement: Arrangement | null = null;
  #shown: readonly PaneName[] = [];
  /** What was chosen last comes first. */
  #preferred: readonly PaneName[] = [];

  constructor(panes: Readonly<Record<PaneName, Pane>>, onChange: () => void) {
    this.#panes = panes;
    this.#onChange = onChange;
  }

  /** The panes that are in view. */
  get shown(): readonly Pane[] {
    return this.#shown.map((name) => this.#panes[name]);
  }

  /** Takes on a size, in multiples of the text size. */
  resize(width: number, height: number): void {
    const arrangement = arrangementFor(width, height);
    if (arrangement.name === this.#arrangement?.name) return;
    this.#arrangement = arrangement;
    this.element.setAttribute('data-arrangement', arrangement.name);
    this.#shown = arrangement.slots.map((slot) => this.#chosenOf(slot));
    this.element.replaceChildren(...arrangement.slots.map((slot, place) => this.#slot(slot, place)));
  }

  #chosenOf(slot: Slot): PaneName {
    return this.#preferred.find((name) => slot.includes(name)) ?? slot[0];
  }

  #slot(names: Slot, place: number): HTMLElement {
    const body = element('div', { class: 'loop-slot-body' });
    const legend = element('ul', { class: 'loop-legend' });
    const show = (name: PaneName) => {
      const pane = this.#panes[name];
      body.replaceChildren(pane.element);
      legend.replaceChildren(...pane.legend.filter((_, __, all) => all.length > 1).map(legendItem));
    };
    const choose = (title: string) => {
      const name = names.find((each) => this.#panes[each].title === title) ?? names[0];
      this.#preferred = [name, ...this.#preferred.filter((each) => each !== name)];
      this.#shown = this.#shown.map((each, k) => (k === place ? name : each));
      show(name);
      this.#onChange();
    };
    show(this.#chosenOf(names));
    return element(
      'section',
      { class: 'loop-slot', 'data-slot': place },
      element('header', {}, this.#head(names, place, choose), legend),
      body,
    );
  }

  #head(names: Slot, place: number, choose: (title: string) => void): HTMLElement {
    const titles = names.map((name) => this.#panes[name].title);
    const chosen = this.#panes[this.#chosenOf(names)].title;
    if (names.length === 1) return element('h3', {}, chosen);
    const segmented = createSegmented(`Plot ${place + 1}`, titles, choose);
    if (chosen !== titles[0]) segmented.choose(chosen);
    return segmented.element;
  }
}

/** A sample of the line and its name. */
function legendItem({ name, title, pen }: ResponseSpec): HTMLElement {
  return element('li', { title }, lineSample(pen), name);
}

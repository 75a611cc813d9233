import type { NumberRow } from '../../../shared/core/parameters/row.ts';
import { element } from '../dom.ts';
import { valueText } from './label.ts';
import { type SliderScale, sliderScale } from './logScale.ts';

/** A slider for the values of a row, on the scale of the row. One drag, or one key held down, is one gesture. */
export class Slider {
  readonly element: HTMLInputElement;
  readonly #row: NumberRow;
  readonly #scale: SliderScale;
  #gestures = 0;
  #value = 0;

  /** `onDrag` hears each value with the number of its gesture. */
  constructor(row: NumberRow, label: string, onDrag: (value: number, gesture: number) => void) {
    this.#row = row;
    this.#scale = sliderScale(row);
    this.element = element('input', {
      type: 'range',
      min: 0,
      max: this.#scale.steps,
      'aria-label': `${label}, slider`,
      oninput: () => onDrag(this.#scale.valueAt(this.element.valueAsNumber), this.#gestures),
      onchange: () => this.show(this.#value),
      onpointerdown: () => this.#gestures++,
      onkeydown: (event) => {
        if (!(event as KeyboardEvent).repeat) this.#gestures++;
      },
    });
  }

  /** Stands where the value in force is, SI. */
  show(value: number): void {
    this.#value = value;
    this.element.value = String(this.#scale.positionOf(value));
    this.element.setAttribute('aria-valuetext', valueText(this.#row, value));
  }

  /** Marks the value to which the field can go back, SI. */
  markOrigin(value: number): void {
    this.element.style.setProperty('--origin', String(this.#scale.positionOf(value) / this.#scale.steps));
  }
}

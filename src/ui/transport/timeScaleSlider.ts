import { element, setAttribute, setText } from '../dom.ts';
import { REAL_TIME, TIME_SCALES, timeScaleText } from './timeScale.ts';

/** How fast it is to go, and how fast it really goes. Real time is asked for from the start. */
export class TimeScaleSlider {
  readonly element: HTMLElement;
  readonly #onTimeScale: (timeScale: number) => void;
  readonly #slider = element('input', {
    type: 'range',
    min: 0,
    max: TIME_SCALES.length - 1,
    value: REAL_TIME,
    'aria-label': 'Time scale',
    oninput: () => this.#choose(this.#slider.valueAsNumber),
  });
  readonly #asked = element('span', { class: 'time-scale-asked' });
  #engine = '';
  readonly #achieved = element('span', { class: 'time-scale-achieved' });

  constructor(onTimeScale: (timeScale: number) => void) {
    this.#onTimeScale = onTimeScale;
    this.element = element(
      'div',
      { class: 'time-scale' },
      this.#slider,
      element('div', { class: 'time-scale-text' }, this.#asked, this.#achieved),
    );
    this.#choose(REAL_TIME);
  }

  /** Steps along the time scales; 0 goes to real time. */
  change(by: -1 | 0 | 1): void {
    const at = by === 0 ? REAL_TIME : this.#slider.valueAsNumber + by;
    this.#choose(Math.min(TIME_SCALES.length - 1, Math.max(0, at)));
  }

  /** What is achieved, in words. */
  showAchieved(text: string): void {
    setText(this.#achieved, text);
  }

  /** By what the pace is held: in short behind the one that was asked for, and in a tooltip. */
  showEngine(text: string, title: string): void {
    this.#engine = text;
    setAttribute(this.#asked, 'title', title);
    this.#showAsked();
  }

  #showAsked(): void {
    const asked = timeScaleText(TIME_SCALES[this.#slider.valueAsNumber] ?? 1);
    setText(this.#asked, [asked, this.#engine].filter(Boolean).join(', '));
  }

  #choose(index: number): void {
    const timeScale = TIME_SCALES[index] ?? 1;
    this.#slider.value = String(index);
    this.#slider.setAttribute('aria-valuetext', timeScaleText(timeScale));
    this.#showAsked();
    this.#onTimeScale(timeScale);
  }
}

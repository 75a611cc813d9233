import { element, setText } from '../app/dom.ts';
import { cssColour } from '../look/colours.ts';

/** Distance from the end of the machine, CSS pixels. */
const OFF = 14;

/** Letter and title of a lane beside its machine. */
export class LaneLabel {
  readonly #letter = element('b', { class: 'lane-letter' });
  readonly #title = element('span', { class: 'lanes-label-title' });
  readonly element = element('div', { class: 'lanes-label' }, this.#letter, this.#title);
  #transform = '';
  #x = 0;
  #y = 0;

  /** CSS pixels. */
  get width(): number {
    return this.element.offsetWidth + OFF;
  }

  show(letter: string, title: string): void {
    setText(this.#letter, letter);
    setText(this.#title, title);
  }

  /** Its left edge, half way up, beside a point of the stage, CSS pixels. */
  place(x: number, y: number): void {
    [this.#x, this.#y] = [x + OFF, y];
    const transform = `translate(${Math.round(x + OFF)}px, ${Math.round(y)}px) translateY(-50%)`;
    if (transform === this.#transform) return;
    this.#transform = transform;
    this.element.style.transform = transform;
  }

  /** Writes it on a picture of the stage, `scale` pixels of it to a CSS pixel. */
  copyTo(pen: CanvasRenderingContext2D, scale: number): void {
    const { fontSize, fontFamily } = getComputedStyle(this.element);
    const size = Number.parseFloat(fontSize) * scale;
    pen.fillStyle = cssColour('--ink');
    pen.textBaseline = 'middle';
    pen.textAlign = 'left';
    pen.font = `700 ${1.25 * size}px ${fontFamily}`;
    const letter = this.#letter.textContent;
    pen.fillText(letter, this.#x * scale, this.#y * scale);
    const indent = pen.measureText(`${letter}  `).width;
    pen.font = `${size}px ${fontFamily}`;
    pen.fillText(this.#title.textContent, this.#x * scale + indent, this.#y * scale);
  }
}

import { element, setText } from '../ui/dom.ts';
import { cssColour } from '../ui/look/colours.ts';
import { candidateLetterMark } from './candidateName.ts';

/** Distance of label and leader from what is beside them, CSS pixels. */
const OFF = 10;
const LINE = 1.15;

/** Letter and title of a candidate beside the machines, and a thin line from its own machine to it. */
export class CandidateLabel {
  readonly #leader = element('i', { class: 'candidates-leader' });
  readonly #letter = candidateLetterMark();
  readonly #title = element('span');
  readonly #text = element('div', { class: 'candidates-label' }, this.#letter, this.#title);
  readonly element = element('div', {}, this.#leader, this.#text);
  #size = { width: 0, height: 0, letter: 0 };
  #x = 0;
  #y = 0;
  #from = 0;
  #height = 0;

  /** CSS pixels, with the distance from what is beside it. */
  get width(): number {
    return this.#size.width + OFF;
  }

  get height(): number {
    return this.#size.height;
  }

  show(letter: string, title: string): void {
    setText(this.#letter, letter);
    setText(this.#title, title);
  }

  /** After a change of its text or of the size of text; out of sight, it stays as it was. */
  measure(): void {
    const { offsetWidth: width, offsetHeight: height } = this.#text;
    if (width > 0) this.#size = { width, height, letter: this.#letter.offsetHeight };
  }

  /** At the right of `x`, half way up at `y`; its leader begins at `from`, `height`. CSS pixels. */
  place(x: number, y: number, from: number, height: number): void {
    [this.#x, this.#y, this.#from, this.#height] = [x + OFF, y, from, height];
    move(this.#text, `translate(${Math.round(x + OFF)}px, ${Math.round(y)}px) translateY(-50%)`);
    const length = Math.max(0, x - from);
    move(
      this.#leader,
      `translate(${Math.round(from)}px, ${Math.round(height)}px) scaleX(${Math.round(length)})`,
    );
  }

  /** Writes it on a picture of the stage, `scale` pixels of it to a CSS pixel. */
  copyTo(pen: CanvasRenderingContext2D, scale: number): void {
    const { fontSize, fontFamily } = getComputedStyle(document.body);
    const size = Number.parseFloat(fontSize);
    pen.save();
    pen.scale(scale, scale);
    pen.fillStyle = cssColour('--ink-soft');
    pen.fillRect(this.#from, this.#height, Math.max(0, this.#x - OFF - this.#from), 1);
    pen.fillStyle = cssColour('--ink');
    pen.textBaseline = 'top';
    pen.font = `700 ${1.2 * size}px ${fontFamily}`;
    let y = this.#y - this.height / 2;
    pen.fillText(this.#letter.textContent, this.#x, y);
    y += this.#size.letter;
    pen.font = `${size}px ${fontFamily}`;
    for (const line of wrapped(pen, this.#title.textContent, this.#size.width)) {
      pen.fillText(line, this.#x, y);
      y += LINE * size;
    }
    pen.restore();
  }
}

function move(target: HTMLElement, transform: string): void {
  if (target.style.transform !== transform) target.style.transform = transform;
}

/** The lines of a text no wider than `width`, a long word alone excepted. */
function wrapped(pen: CanvasRenderingContext2D, text: string, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const longer = `${last} ${word}`;
    if (last !== undefined && pen.measureText(longer).width <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

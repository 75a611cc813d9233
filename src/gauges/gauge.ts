import type { Quantity } from '../../shared/core/channels.ts';
import { element, setAttribute, setText } from '../ui/dom.ts';

/** What a gauge says in words and numbers. */
interface GaugeText {
  readonly value: string;
  readonly notes: readonly string[];
  /** Something is at or beyond its limit; the notes say what. */
  readonly alarm: boolean;
}

/** What a screen reader is told of the scale; the words say the unit. */
interface GaugeScale {
  readonly low: number;
  readonly high: number;
  readonly now: number;
}

/** Kinds of marks on a bar: the highest value of late, a limit, the mean over time. */
type MarkKind = 'peak' | 'limit' | 'mean';

/** A name, a large number, a bar with marks, and notes below it. */
export class Gauge {
  readonly element: HTMLElement;
  readonly #value = element('span', { class: 'gauge-value' });
  readonly #bar = element('div', { class: 'gauge-bar' });
  readonly #fill = new Moved('gauge-fill');
  readonly #zone = new Moved('gauge-zone');
  readonly #notes: readonly HTMLElement[];
  readonly #marks = new Map<MarkKind, Moved>();

  /** `meaning` says what the bar and its marks stand for. */
  constructor(name: string, meaning: string, quantity: Quantity, noteCount = 0) {
    this.#notes = Array.from({ length: noteCount }, () => element('p', { class: 'gauge-note' }));
    this.#bar.append(this.#zone.element, this.#fill.element);
    this.element = element(
      'div',
      {
        class: 'gauge',
        role: 'meter',
        title: meaning,
        'aria-label': name,
        style: `--gauge-colour: var(--q-${quantity})`,
      },
      element('p', { class: 'gauge-name' }, name),
      this.#value,
      this.#bar,
      ...this.#notes,
    );
  }

  /** Labels below the bar at fractions of its width. */
  setTicks(ticks: readonly (readonly [fraction: number, label: string])[]): void {
    const labels = ticks.map(([fraction, label]) =>
      element('span', { class: 'gauge-tick', style: `left: ${100 * fraction}%` }, label),
    );
    this.#bar.after(element('div', { class: 'gauge-ticks' }, ...labels));
  }

  /** The bar reaches to a fraction of its width. */
  setFill(fraction: number): void {
    this.#fill.to(`scaleX(${fraction.toFixed(4)})`);
  }

  setMark(kind: MarkKind, fraction: number): void {
    let mark = this.#marks.get(kind);
    if (!mark) {
      mark = new Moved(`gauge-mark gauge-${kind}`);
      this.#marks.set(kind, mark);
      this.#bar.append(mark.element);
    }
    mark.to(`translateX(${(100 * fraction).toFixed(2)}%)`);
  }

  /** A tinted range of the bar. */
  setZone(from: number, to: number): void {
    this.#zone.to(`translateX(${(100 * from).toFixed(2)}%) scaleX(${(to - from).toFixed(4)})`);
  }

  write({ value, notes, alarm }: GaugeText, { low, high, now }: GaugeScale): void {
    setText(this.#value, value);
    for (const [i, note] of this.#notes.entries()) setText(note, notes[i] ?? '');
    this.element.classList.toggle('gauge-alarm', alarm);
    setAttribute(this.element, 'aria-valuemin', plain(low));
    setAttribute(this.element, 'aria-valuemax', plain(high));
    this.element.setAttribute('aria-valuenow', plain(Number.isFinite(now) ? now : low));
    this.element.setAttribute('aria-valuetext', [value, ...notes].join(', '));
  }
}

/** A number without a power of ten, which such attributes must not have. */
function plain(value: number): string {
  return String(Number(value.toFixed(4)));
}

/** A part of a bar that moves. Where it was moved to is remembered: asking the browser would have it written out anew. */
class Moved {
  readonly element: HTMLElement;
  #transform = '';

  constructor(className: string) {
    this.element = element('div', { class: className });
  }

  to(transform: string): void {
    if (transform === this.#transform) return;
    this.#transform = transform;
    this.element.style.transform = transform;
  }
}

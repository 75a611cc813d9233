import { byId } from '../ui/dom.ts';
import { prefer, preferredEntries } from '../ui/preferences.ts';

const PARTS = ['panel', 'gauges', 'charts'] as const;
type Part = (typeof PARTS)[number];

/** Which parts of the page are folded away, and the presenter size: as they were left the last time. */
export class Layout {
  readonly #onChange: () => void;

  constructor(onChange: () => void) {
    this.#onChange = onChange;
    const kept = preferredEntries<Part | 'presenting'>('layout');
    for (const part of PARTS) if (kept[part] === false) this.#fold(part, true);
    if (kept.presenting === true) setSize(true);
  }

  isShown(part: Part): boolean {
    return !byId('bench').classList.contains(`no-${part}`);
  }

  show(part: Part, shown: boolean): void {
    this.#fold(part, !shown);
    const parts = PARTS.map((each) => [each, this.isShown(each)]);
    prefer('layout', JSON.stringify({ ...Object.fromEntries(parts), presenting: this.isPresenting }));
    this.#onChange();
  }

  #fold(part: Part, folded: boolean): void {
    byId('bench').classList.toggle(`no-${part}`, folded);
  }

  toggle(part: Part): void {
    this.show(part, !this.isShown(part));
  }

  get isPresenting(): boolean {
    return document.documentElement.getAttribute('data-size') === 'presenter';
  }

  /** For a projector: everything half as large again, and what is only for tuning folded away. */
  togglePresenting(): void {
    const presenting = !this.isPresenting;
    setSize(presenting);
    this.show('panel', !presenting);
  }
}

function setSize(presenting: boolean): void {
  document.documentElement.setAttribute('data-size', presenting ? 'presenter' : 'desk');
}

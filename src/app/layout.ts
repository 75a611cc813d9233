import { byId } from './dom.ts';

export type Part = 'panel' | 'gauges' | 'charts';

/** Which parts of the page are folded away, and the presenter size. */
export class Layout {
  readonly #onChange: () => void;

  constructor(onChange: () => void) {
    this.#onChange = onChange;
  }

  isShown(part: Part): boolean {
    return !byId('bench').classList.contains(`no-${part}`);
  }

  show(part: Part, shown: boolean): void {
    byId('bench').classList.toggle(`no-${part}`, !shown);
    this.#onChange();
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
    document.documentElement.setAttribute('data-size', presenting ? 'presenter' : 'desk');
    this.show('panel', !presenting);
  }
}

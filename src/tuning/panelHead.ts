import { button, element, setAttribute, setHidden, setText } from '../ui/dom.ts';

interface PanelHeadOptions {
  undo(): void;
  redo(): void;
  /** Puts every field back to the scene. */
  resetAll(): void;
  /** Other fields are wanted: see `isWanted` of the panel. */
  onFilter(): void;
  /** Enter in the search. */
  onFind(): void;
}

/** On top of the panel: undo and redo, the search, and how much differs from the scene. */
export class PanelHead {
  readonly element: HTMLElement;
  readonly #undo: HTMLButtonElement;
  readonly #redo: HTMLButtonElement;
  readonly #search: HTMLInputElement;
  readonly #everything: HTMLInputElement;
  readonly #changes = element('span');
  readonly #resetAll: HTMLButtonElement;
  readonly #nothing = element('p', { class: 'panel-nothing', role: 'status' });

  constructor(options: PanelHeadOptions) {
    this.#undo = button('Undo', options.undo);
    this.#redo = button('Redo', options.redo);
    this.#search = element('input', {
      type: 'search',
      id: 'parameter-search',
      placeholder: 'Find a parameter',
      'aria-label': 'Find a parameter',
      'aria-keyshortcuts': '/',
      oninput: options.onFilter,
      onkeydown: (event) => this.#onSearchKey(event as KeyboardEvent, options),
    });
    this.#everything = element('input', { type: 'checkbox', onchange: options.onFilter });
    this.#resetAll = button('Reset all', options.resetAll, { title: 'Reset all to scene values' });
    this.element = element(
      'div',
      { class: 'panel-head' },
      element('h2', {}, 'Tuning'),
      element('div', { class: 'panel-steps' }, this.#undo, this.#redo),
      this.#search,
      element('label', { class: 'panel-everything' }, this.#everything, 'also show parameters not in use'),
      element('div', { class: 'panel-changes' }, this.#changes, this.#resetAll),
      this.#nothing,
    );
  }

  /** What is searched for; empty: nothing. */
  get wanted(): string {
    return this.#search.value.trim();
  }

  /** Parameters without effect are to be shown as well. */
  get showsEverything(): boolean {
    return this.#everything.checked;
  }

  focusSearch(): void {
    this.#search.focus();
    this.#search.select();
  }

  /** What undo and redo would do, in words; null: nothing. */
  showSteps(undo: string | null, redo: string | null): void {
    this.#undo.disabled = undo === null;
    this.#redo.disabled = redo === null;
    setAttribute(this.#undo, 'title', `Undo${undo ? `: ${undo}` : ''} (key Ctrl+Z)`);
    setAttribute(this.#redo, 'title', `Redo${redo ? `: ${redo}` : ''} (key Ctrl+Shift+Z)`);
  }

  /** How many fields differ from the scene, and whether any is in sight. */
  showCounts(changed: number, isEmpty: boolean): void {
    setText(this.#nothing, isEmpty ? `No parameter matches “${this.wanted}”.` : '');
    setText(this.#changes, changed === 0 ? 'Unchanged from the scene' : `${changed} changed from the scene`);
    setHidden(this.#resetAll, changed === 0);
  }

  #onSearchKey({ key }: KeyboardEvent, { onFilter, onFind }: PanelHeadOptions): void {
    if (key === 'Enter') onFind();
    if (key !== 'Escape') return;
    this.#search.value = '';
    onFilter();
  }
}

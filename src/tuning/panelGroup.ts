import type { GUI } from 'lil-gui';
import { setHidden } from '../ui/dom.ts';
import type { ParameterField } from './parameterField.ts';

/** A group of the panel: a folder of lil-gui, used through its public interface only, with fields of our own in it. */
export class PanelGroup {
  readonly fields: readonly ParameterField[];
  readonly #title: string;
  readonly #folder: GUI;
  #shownTitle: string;
  /** As a folder of lil-gui is made. */
  #isOpen = true;

  constructor(gui: GUI, title: string, fields: readonly ParameterField[], isOpen: boolean) {
    this.fields = fields;
    this.#title = this.#shownTitle = title;
    this.#folder = gui.addFolder(title);
    this.#folder.domElement.classList.add('panel-group');
    this.#folder.$title.classList.add('panel-group-title');
    this.#folder.$children.classList.add('panel-group-fields');
    this.#folder.$children.append(...fields.map((field) => field.element));
    this.#folder.onOpenClose(() => {
      this.#isOpen = !this.#isOpen;
    });
    // In place of the folder's own opening, which holds the height that its fields have at that moment for as long as it moves.
    this.#folder.$title.addEventListener(
      'click',
      (event) => {
        event.stopImmediatePropagation();
        this.open(!this.#isOpen);
      },
      { capture: true },
    );
    this.open(isOpen);
  }

  get isOpen(): boolean {
    return this.#isOpen;
  }

  open(open: boolean): void {
    this.#folder.open(open);
  }

  /** Puts what belongs to a field after it, or at the end of the group. */
  add(elements: readonly HTMLElement[], after?: ParameterField): void {
    if (after) after.element.after(...elements);
    else this.#folder.$children.append(...elements);
  }

  /** Shows the fields that are wanted, and how many differ from the scene. A group without any is not there. */
  arrange(isWanted: (field: ParameterField) => boolean): void {
    for (const field of this.fields) setHidden(field.element, !isWanted(field));
    this.#folder.show(this.fields.some((field) => !field.element.hidden));
    const changed = this.fields.filter((field) => field.isChanged).length;
    const title = changed > 0 ? `${this.#title}: ${changed} changed` : this.#title;
    if (title !== this.#shownTitle) this.#folder.title(title);
    this.#shownTitle = title;
  }
}

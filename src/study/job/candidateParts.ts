import {
  chosenParts,
  fittingParts,
  PART_KINDS,
  PART_LABELS,
  PARTS,
  type PartChoice,
  type PartKind,
} from '../../../shared/study/parts.ts';
import { element } from '../../ui/dom.ts';

/** Guide, encoder, screw and its ends of a candidate. */
export class CandidateParts {
  readonly element: HTMLElement;
  readonly #pickers: ReadonlyMap<PartKind, HTMLSelectElement>;
  readonly #places: ReadonlyMap<PartKind, HTMLElement>;
  #parts: PartChoice = {};

  constructor(letter: string, onChoice: (parts: PartChoice) => void) {
    const picker = (kind: PartKind) =>
      element('select', {
        'aria-label': `${PART_LABELS[kind]} of candidate ${letter}`,
        onchange: () => onChoice({ ...this.#parts, [kind]: this.#pickers.get(kind)?.value }),
      });
    this.#pickers = new Map(PART_KINDS.map((kind) => [kind, picker(kind)]));
    this.#places = new Map(
      [...this.#pickers].map(([kind, select]) => [
        kind,
        element('label', {}, `${PART_LABELS[kind]} `, select),
      ]),
    );
    this.element = element('div', { class: 'candidate-parts' }, ...this.#places.values());
  }

  /** Offers what fits a drive with this lead (0: no screw), and shows what is chosen. */
  show(lead: number, parts: PartChoice): void {
    this.#parts = parts;
    const chosen = chosenParts({ lead }, parts);
    for (const [kind, select] of this.#pickers) {
      const fitting = fittingParts(kind, { lead });
      const options: Readonly<Record<string, { readonly title: string }>> = PARTS[kind];
      select.replaceChildren(
        ...fitting.map((value) => element('option', { value }, options[value]?.title ?? value)),
      );
      select.value = chosen[kind];
      const place = this.#places.get(kind);
      // A grade shows only where nothing but the screw measures.
      if (place) place.hidden = fitting.length === 0 || (kind === 'screw' && chosen.encoder !== 'motor');
    }
  }
}

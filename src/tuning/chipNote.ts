import { bedKey } from '../../shared/axis/chips/chipBed.ts';
import { chipWeight, heldChip } from '../../shared/axis/chips/chipForce.ts';
import { openMagnets } from '../../shared/axis/flux/motorFlux.ts';
import { ranged } from '../../shared/core/format.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { element, setText } from '../ui/dom.ts';

/** What every maker of linear motors warns of; common practice, no source. */
const CAUTION =
  'On a real machine: lock it out, clear chips with a non-magnetic tool, never by hand. Strong magnets and a free table pinch. Follow local practice.';

/** How hard a chip is held, and what to beware of. */
export class ChipNote {
  readonly #text = element('p');
  #shown = '';
  readonly element = element(
    'section',
    { class: 'shaping-note', 'aria-label': 'Chips on magnets' },
    this.#text,
    element('p', {}, CAUTION),
  );

  /** The field of the magnets is worked out only where it may differ: a slider of a gain moves many times a second. */
  show(p: Parameters): void {
    const shown = bedKey(p);
    if (shown === this.#shown) return;
    this.#shown = shown;
    setText(this.#text, heldText(p));
  }
}

/** 'A round chip of 1.20 mm on open magnets is held by 0.30 N, 4400 times its weight. The gap is 1.00 mm: …' */
export function heldText(p: Parameters): string {
  const magnets = openMagnets(p);
  if (!magnets)
    return 'No open magnets here: no chip is attracted. What chips do to nut and guide is not modelled.';
  const { force } = heldChip(magnets, p.chipSize);
  const times = Number((force / chipWeight(p.chipSize)).toPrecision(2));
  return (
    `A round chip of ${ranged(p.chipSize, 'm')} on open magnets is held by ${ranged(force, 'N', 2)}, ${times} times its weight. ` +
    `The gap is ${ranged(magnets.clearance, 'm')}: smaller chips pass beneath the coil unit, slightly larger ones jam, large ones are pushed to the ends.`
  );
}

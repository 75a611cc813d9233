import { type ChipBed, metBy, type SweptChips } from '../../shared/axis/chips/chipBed.ts';
import { chipWeight, heldChip } from '../../shared/axis/chips/chipForce.ts';
import { openMagnets } from '../../shared/axis/flux/motorFlux.ts';
import { ranged } from '../../shared/core/format.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';

/** What every maker of linear motors warns of; common practice, no source. */
const CAUTION =
  'On a real machine: lock it out, clear chips with a non-magnetic tool, never by hand; strong magnets and a free table pinch. Follow local practice.';

/** What the chips do; empty without any. */
export function chipText(
  p: Parameters,
  bed: ChipBed | null,
  swept: SweptChips | null,
  enlarged: number,
): string {
  if (p.chipCount === 0) return '';
  if (p.cover) return `The cover keeps ${p.chipCount} chips off the magnets. ${CAUTION}`;
  const magnets = openMagnets(p);
  if (!bed || !magnets) {
    return 'No open magnets here: no chip is attracted. What chips do to a nut or a guide is not modelled.';
  }
  if (!swept) return '';
  const size = p.chipSize;
  const { force } = heldChip(magnets, size);
  const times = Number((force / chipWeight(size)).toPrecision(2));
  return [
    `${countsText(bed, swept)}.`,
    `They brake by ${ranged(swept.force, 'N', 2)} now.`,
    `A chip of ${ranged(size, 'm')} is held by ${ranged(force, 'N', 2)}, ${times} times its weight; the gap is ${ranged(magnets.clearance, 'm')}.`,
    `Drawn ${enlarged} times as large.`,
    CAUTION,
  ].join(' ');
}

/** '60 chips: 31 not reached, 12 passed over, 9 pushed to the ends, 8 jammed in the gap' */
function countsText({ chips, magnets }: ChipBed, { poured, from, to }: SweptChips): string {
  const counts = { waiting: 0, passes: 0, pushed: 0, jams: 0, off: 0 };
  for (const { seat, of } of chips) {
    const met = metBy(seat, magnets.unitLength, poured, from, to);
    if (Number.isNaN(met)) counts.off++;
    else if (met === 0) counts.waiting++;
    else counts[of.fate]++;
  }
  const parts = [
    [counts.off, 'fell on the coil unit'],
    [counts.waiting, 'held and not reached'],
    [counts.passes, 'small enough to pass beneath'],
    [counts.pushed, 'pushed ahead'],
    [counts.jams, 'jammed in the gap'],
  ] as const;
  const said = parts.filter(([count]) => count > 0).map(([count, what]) => `${count} ${what}`);
  return `${chips.length} chips: ${said.join(', ')}`;
}

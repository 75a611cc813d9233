import { type ChipBed, metBy } from '../../shared/axis/chips/chipBed.ts';
import { ranged } from '../../shared/core/format.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { SweptChips } from '../../shared/core/sweptChips.ts';

/** Below this no braking is spoken of, N. */
const NOTHING = 0.01;

/** What the chips do now; empty without any. `enlarged`: how much larger they are drawn. */
export function chipText(
  p: Parameters,
  bed: ChipBed | null,
  swept: SweptChips | null,
  enlarged: number,
): string {
  if (p.chipCount === 0) return '';
  if (p.cover) return `The cover keeps ${p.chipCount} chips off the magnets.`;
  if (!bed) return 'No open magnets: no chip is attracted.';
  if (!swept) return '';
  const braking =
    swept.force < NOTHING ? 'They do not brake now' : `They brake by ${ranged(swept.force, 'N', 2)} now`;
  return `${countsText(bed, swept)}. ${braking}. Drawn ${enlarged} times as large.`;
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
    [counts.off, 'on top of the coil unit'],
    [counts.waiting, 'held and not reached'],
    [counts.passes, 'small enough to pass beneath'],
    [counts.pushed, 'pushed ahead'],
    [counts.jams, 'jammed in the gap'],
  ] as const;
  const said = parts.filter(([count]) => count > 0).map(([count, what]) => `${count} ${what}`);
  return `${chips.length} chips: ${said.join(', ')}`;
}

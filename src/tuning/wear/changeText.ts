import { dryMotorDrag } from '../../../shared/axis/drag.ts';
import { slidingFriction } from '../../../shared/axis/guide.ts';
import { wornParameters } from '../../../shared/axis/wear.ts';
import { ranged } from '../../../shared/core/format.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { PositioningTest } from '../../../shared/protocol/accuracy.ts';

/** A figure counts as changed from this share on: a repeated test moves by less, because friction is never quite the same. */
const CHANGED = 0.1;

/** What the kilometres did to the two figures that show lost motion. */
export function changeText(fresh: PositioningTest, worn: PositioningTest): string {
  const figure = (label: string, before: number, now: number) => {
    const change = now / before - 1;
    if (!(Math.abs(change) > CHANGED)) return `${label} stays at ${ranged(before, 'm')}`;
    return `${label} ${change > 0 ? 'grows' : 'falls'} from ${ranged(before, 'm')} to ${ranged(now, 'm')}`;
  };
  const reversal = figure('The reversal error', fresh.figures.reversal, worn.figures.reversal);
  const repeatability = figure(
    'the bidirectional repeatability',
    fresh.figures.repeatability,
    worn.figures.repeatability,
  );
  return `${reversal}, ${repeatability}.`;
}

/**
 * Why a worn machine reverses better than the new one, where it does: what friction it has lost counts for more than what lost motion it
 * has gained. Empty where it does not, or where its friction has not fallen.
 */
export function frictionText(p: Parameters, fresh: PositioningTest, worn: PositioningTest): string {
  const [before, now] = [fresh.figures.reversal, worn.figures.reversal];
  const after = wornParameters(p);
  const [most, left] = [dryFriction(p), dryFriction(after)];
  if (!(now / before - 1 < -CHANGED && left < most)) return '';
  const gained = after.backlash - p.backlash;
  const instead = gained > 0 ? `, by more than the ${ranged(gained, 'm')} that new lost motion adds` : '';
  return (
    `The reversal error falls because friction does, from ${ranged(most, 'N')} to ${ranged(left, 'N')} as preload is lost${instead}: ` +
    `with these gains at least ${ranged(before - now, 'm')} of it was friction when the machine was new. ` +
    'Lost preload also costs stiffness, which the model leaves out: this does not make it a better machine.'
  );
}

/** Of guide, nut and iron while the table slides, N. */
function dryFriction(p: Parameters): number {
  return slidingFriction(p) + dryMotorDrag(p);
}

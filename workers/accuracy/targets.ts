/** Positions at which an axis is measured, m. */
interface MeasuringPlan {
  readonly targets: readonly number[];
  /** Reversal points, beyond the first and the last target. */
  readonly from: number;
  readonly to: number;
}

/**
 * Targets of ISO 230-2:2014, 5.3 (from memory): five per metre up to two metres, five at least, and
 * every 250 mm on a longer axis.
 */
const PER_METRE = 5;
const MIN = 5;
const LONG = 2;
const LONG_SPACING = 0.25;

/** Largest displacement of a target from even spacing, as a share of the spacing. */
const UNEVEN = 0.3;
/** Multiples of the golden section are spread most evenly over whole turns (Weyl). */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Targets for a travel in the middle of `low` to `high`, unevenly spaced, as the standard asks, so
 * that an error which repeats along the axis is not always met at the same phase. The axis reverses
 * halfway between the outer targets and the ends of the available travel.
 */
export function measuringPlan(low: number, high: number, travel: number): MeasuringPlan {
  const count =
    travel > LONG ? Math.ceil(travel / LONG_SPACING) + 1 : Math.max(MIN, Math.ceil(PER_METRE * travel));
  const first = (low + high - travel) / 2;
  const spacing = travel / (count - 1);
  const targets = Array.from({ length: count }, (_, i) => {
    if (i === 0) return first;
    if (i === count - 1) return first + travel;
    return first + spacing * (i + UNEVEN * (2 * ((i * GOLDEN) % 1) - 1));
  });
  return { targets, from: (low + first) / 2, to: (high + first + travel) / 2 };
}

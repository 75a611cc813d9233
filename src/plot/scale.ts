/** From a value to where it is drawn, and back. */
export interface Scale {
  /** The values at its ends, and the places of these ends, px or shares of a length. */
  readonly from: number;
  readonly to: number;
  readonly start: number;
  readonly end: number;
  /** Place of a value; beyond the ends outside. */
  at(value: number): number;
  valueAt(place: number): number;
}

/** Equal steps are equally long. */
export function linearScale(from: number, to: number, start: number, end: number): Scale {
  const perUnit = (end - start) / (to - from);
  return {
    from,
    to,
    start,
    end,
    at: (value) => start + (value - from) * perUnit,
    valueAt: (place) => from + (place - start) / perUnit,
  };
}

/** Equal ratios are equally long; both ends above zero. */
export function logScale(from: number, to: number, start: number, end: number): Scale {
  const perUnit = (end - start) / Math.log(to / from);
  return {
    from,
    to,
    start,
    end,
    at: (value) => start + Math.log(value / from) * perUnit,
    valueAt: (place) => from * Math.exp((place - start) / perUnit),
  };
}

/** The same places for values of the opposite sign. */
export function mirrored({ from, to, start, end }: Scale): Scale {
  return linearScale(-from, -to, start, end);
}

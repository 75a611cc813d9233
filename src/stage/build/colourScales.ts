import { at } from '../../../shared/core/at.ts';

/** Red, green and blue of the screen (sRGB), 0 to 1. */
export type Rgb = [r: number, g: number, b: number];

const fromHex = (hex: string): Rgb =>
  [0, 2, 4].map((i) => Number.parseInt(hex.slice(i, i + 2), 16) / 255) as Rgb;

/**
 * Purple through white to orange: PuOr by Cynthia Brewer (ColorBrewer 2.0, colour-blind safe; its darkest ends left out).
 * Values from memory.
 */
const DIVERGING = ['542788', '8073ac', 'b2abd2', 'e4e2e6', 'fdb863', 'e08214', 'b35806'].map(fromHex);

/** Blue through magenta to yellow: plasma by van der Walt and Smith (matplotlib 2.0). Values from memory. */
const SEQUENTIAL = ['0d0887', '5302a3', '8b0aa5', 'b83289', 'db5c68', 'f48849', 'febd2a', 'f0f921'].map(
  fromHex,
);

function along(stops: readonly Rgb[], share: number, into: Rgb): Rgb {
  const place = Math.min(Math.max(share, 0), 1) * (stops.length - 1);
  const i = Math.min(Math.floor(place), stops.length - 2);
  const from = at(stops, i);
  const to = at(stops, i + 1);
  const w = place - i;
  for (let k = 0; k < 3; k++) into[k] = at(from, k) + w * (at(to, k) - at(from, k));
  return into;
}

/** Colour of a signed share of full scale, −1 to 1; white is zero. */
export function signedColour(share: number, into: Rgb = [0, 0, 0]): Rgb {
  return along(DIVERGING, 0.5 + 0.5 * share, into);
}

/** Colour of a share from cold (0) to the limit (1). */
export function heatColour(share: number, into: Rgb = [0, 0, 0]): Rgb {
  return along(SEQUENTIAL, share, into);
}

/** Where along the colours of heat the middle of the legend is: a share of the rise from ambient to the limit of the winding. */
export const HEAT_MIDDLE = 0.25;

/**
 * Place of a temperature along the colours of heat. By the square root of the rise, so that a table shows its first kelvins as well as a
 * winding its last: what spreads from one to the other is seen on both.
 */
export function heatShare(temperature: number, ambient: number, limit: number): number {
  return Math.sqrt(Math.min(Math.max((temperature - ambient) / (limit - ambient), 0), 1));
}

/** A CSS gradient of either scale, left to right, for a legend. */
export function cssGradient(colour: (share: number) => Rgb, from: number, to: number): string {
  const stops = Array.from({ length: 13 }, (_, i) => {
    const [r, g, b] = colour(from + ((to - from) * i) / 12).map((part) => Math.round(255 * part));
    return `rgb(${r} ${g} ${b})`;
  });
  return `linear-gradient(to right, ${stops.join(', ')})`;
}

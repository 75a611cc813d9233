import type { Quantity } from '../../../shared/core/channels.ts';

/**
 * Colours of the page that things are drawn in besides those of quantities, and their custom
 * properties.
 */
const PAGE_COLOURS = {
  ink: '--ink',
  soft: '--ink-soft',
  line: '--line',
  strong: '--line-strong',
  panel: '--panel',
  /** What curves are drawn on. */
  ground: '--raised',
  accent: '--accent',
  alarm: '--alarm',
} as const;

type PageColour = keyof typeof PAGE_COLOURS;

/** What something may be drawn in: the colour of its quantity, or one of the page. */
export type Colour = Quantity | PageColour;

/** The custom property of the page that holds a colour. */
export function colourProperty(colour: Colour): string {
  return isPageColour(colour) ? PAGE_COLOURS[colour] : `--q-${colour}`;
}

function isPageColour(colour: Colour): colour is PageColour {
  return colour in PAGE_COLOURS;
}

const looked = new Map<string, string>();

/**
 * The present value of a custom property of the page, e.g. `cssColour('--q-position')`, for what is
 * drawn rather than styled. Looked up once per theme.
 */
export function cssColour(name: string): string {
  let colour = looked.get(name);
  if (colour === undefined) {
    colour = getComputedStyle(document.documentElement).getPropertyValue(name).trim();
    looked.set(name, colour);
  }
  return colour;
}

/** To be called when the theme has changed, before anything is drawn again. */
export function forgetColours(): void {
  looked.clear();
}

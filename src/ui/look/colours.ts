const looked = new Map<string, string>();

/**
 * The present value of a custom property of the page, e.g. `cssColour('--q-position')`, for what is drawn rather
 * than styled. Looked up once per theme.
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

import { type Colour, colourProperty, cssColour } from '../../ui/look/colours.ts';

/** What the canvas draws with, read from the page once per change of theme or size. */
export interface Theme {
  colour(colour: Colour): string;
  /** Height of small text, CSS pixels, and the font in that size. */
  readonly textSize: number;
  readonly font: string;
}

/** `element` carries the size and the family of the text. */
export function readTheme(element: Element): Theme {
  const { fontSize, fontFamily } = getComputedStyle(element);
  return {
    colour: (colour) => cssColour(colourProperty(colour)),
    textSize: Number.parseFloat(fontSize),
    font: `${fontSize} ${fontFamily}`,
  };
}

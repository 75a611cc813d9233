import type { Quantity } from '../../../shared/core/channels.ts';
import { cssColour } from '../../ui/look/colours.ts';

/** What the canvas draws with, read from the page once per change of theme or size. */
export interface Theme {
  quantity(quantity: Quantity): string;
  readonly ink: string;
  readonly soft: string;
  readonly line: string;
  readonly strong: string;
  readonly ground: string;
  readonly plot: string;
  readonly accent: string;
  readonly alarm: string;
  /** Height of small text, CSS pixels, and the font in that size. */
  readonly textSize: number;
  readonly font: string;
}

/** `element` carries the size and the family of the text. */
export function readTheme(element: Element): Theme {
  const { fontSize, fontFamily } = getComputedStyle(element);
  return {
    quantity: (quantity) => cssColour(`--q-${quantity}`),
    ink: cssColour('--ink'),
    soft: cssColour('--ink-soft'),
    line: cssColour('--line'),
    strong: cssColour('--line-strong'),
    ground: cssColour('--panel'),
    plot: cssColour('--raised'),
    accent: cssColour('--accent'),
    alarm: cssColour('--alarm'),
    textSize: Number.parseFloat(fontSize),
    font: `${fontSize} ${fontFamily}`,
  };
}

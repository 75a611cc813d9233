import { colourProperty } from '../ui/look/colours.ts';
import { DASHES, type Pen } from './pens.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** A short piece of a line, for its name in a legend. */
export function lineSample({ colour = 'ink', width = 1, dash = 'solid' }: Pen): SVGElement {
  const sample = document.createElementNS(SVG, 'svg');
  sample.setAttribute('viewBox', '0 0 28 10');
  sample.setAttribute('aria-hidden', 'true');
  const line = document.createElementNS(SVG, 'path');
  line.setAttribute('d', 'M0 5H28');
  line.style.stroke = `var(${colourProperty(colour)})`;
  line.style.strokeWidth = String(width);
  line.style.strokeDasharray = DASHES[dash].join(' ');
  sample.append(line);
  return sample;
}

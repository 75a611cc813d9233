import { element } from '../ui/dom.ts';
import type { Drawing } from './drawing.ts';
import { svg } from './svg.ts';

/** Drawings on the page, one below the other. */
export function drawn(...drawings: readonly Drawing[]): HTMLElement {
  const place = element('div');
  place.innerHTML = drawings.map((drawing) => svg(drawing).text).join('');
  return place;
}

import { type PerspectiveCamera, Vector3 } from 'three';
import type { Machine } from './machine.ts';
import { type PictureSize, placeOnScreen } from './screenPlace.ts';

/** Height of the rule's letters as a share of the page's text, as its small text has it, and the least that can be read, pixels. */
const LETTERS = 0.9375;
const MIN_LETTERS = 14;

/** Makes the letters of the rule as high on a picture of this size as those of the page, `text` pixels. */
export function fitRule(machine: Machine, camera: PerspectiveCamera, size: PictureSize, text: number): void {
  const { zMax, height } = machine.plan.base;
  const [top, bottom] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  placeOnScreen(machine, camera, new Vector3(0, 0, zMax), size, top);
  placeOnScreen(machine, camera, new Vector3(0, -height, zMax), size, bottom);
  const pixels = Math.hypot(top.x - bottom.x, top.y - bottom.y) / height;
  machine.rule.fit((LETTERS * text) / pixels, MIN_LETTERS / pixels);
}

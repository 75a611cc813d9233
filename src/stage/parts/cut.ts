import { BoxGeometry, EdgesGeometry, LineSegments, type Mesh } from 'three';
import type { Shop } from '../build/shop.ts';
import { solid } from '../build/solids.ts';

/** The rear part of a cut block: hatched where it is cut. */
export function section(
  { bin, m }: Shop,
  length: number,
  height: number,
  zFrom: number,
  zTo: number,
  bottom: number,
  material: Mesh['material'],
): Mesh {
  const geometry = bin.own(new BoxGeometry(length, height, zTo - zFrom));
  const uv = geometry.getAttribute('uv');
  // Faces come as +x, −x, +y, −y, +z, −z, four corners each; the cut one is +z, its hatching in 12 mm tiles.
  for (let i = 16; i < 20; i++) uv.setXY(i, (uv.getX(i) * length) / 0.012, (uv.getY(i) * height) / 0.012);
  const skin = material as typeof m.anodised;
  return solid(geometry, [skin, skin, skin, skin, m.cut, skin], [0, bottom + height / 2, (zFrom + zTo) / 2]);
}

/** Outline of what was taken away. */
export function phantom(
  { bin, m }: Shop,
  length: number,
  height: number,
  zFrom: number,
  zTo: number,
  bottom: number,
): LineSegments {
  const box = new BoxGeometry(length, height, zTo - zFrom);
  const lines = new LineSegments(bin.own(new EdgesGeometry(box)), m.phantom);
  box.dispose();
  lines.position.set(0, bottom + height / 2, (zFrom + zTo) / 2);
  return lines;
}

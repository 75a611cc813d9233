import { BoxGeometry, type BufferAttribute, Group, type Material } from 'three';
import type { Size } from '../../../shared/axis/motorSize.ts';
import type { Shop } from '../build/shop.ts';
import { many, type Point } from '../build/solids.ts';

/** A face of a box in the order of its material groups. */
const FACES = { up: 2, front: 4 } as const;

export interface Magnet {
  readonly at: Point;
  readonly north: boolean;
}

/** Nickel-plated blocks, each with the letter of its pole on the face that shows it. */
export function magnets(
  { bin, m }: Shop,
  size: Size,
  face: keyof typeof FACES,
  all: readonly Magnet[],
): Group {
  const group = new Group();
  const geometry = bin.own(new BoxGeometry(size.length, size.height, size.width));
  keepLettersSquare(geometry, FACES[face], size.length, face === 'up' ? size.width : size.height);
  for (const north of [true, false]) {
    const plain: Material = north ? m.nickelNorth : m.nickelSouth;
    const skins = Array.from({ length: 6 }, () => plain);
    skins[FACES[face]] = north ? m.lettered.north : m.lettered.south;
    const places = all.filter((magnet) => magnet.north === north).map(({ at }) => at);
    const mesh = many(bin, geometry, plain, places);
    mesh.material = skins;
    group.add(mesh);
  }
  return group;
}

/** The letter fills the shorter side of its face; its white rim extends over the rest. */
function keepLettersSquare(geometry: BoxGeometry, face: number, u: number, v: number): void {
  const uv = geometry.getAttribute('uv') as BufferAttribute;
  const side = 0.86 * Math.min(u, v);
  for (let i = 4 * face; i < 4 * face + 4; i++)
    uv.setXY(i, 0.5 + ((uv.getX(i) - 0.5) * u) / side, 0.5 + ((uv.getY(i) - 0.5) * v) / side);
}

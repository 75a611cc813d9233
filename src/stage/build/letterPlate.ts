import { type BufferAttribute, type BufferGeometry, CylinderGeometry } from 'three';

/**
 * A piece of a round surface about the axis for a letter, upright for whoever looks from the front: `side` along the axis, `tall`
 * times that around it. Its middle lies `rise` above level, rad.
 */
export function letterPlate(radius: number, side: number, rise: number, tall = 1): BufferGeometry {
  const arc = (tall * side) / radius;
  const plate = new CylinderGeometry(radius, radius, side, 10, 1, true, rise - arc / 2, arc).rotateZ(
    Math.PI / 2,
  );
  const uv = plate.getAttribute('uv') as BufferAttribute;
  for (let i = 0; i < uv.count; i++) uv.setXY(i, 1 - uv.getY(i), uv.getX(i));
  return plate;
}

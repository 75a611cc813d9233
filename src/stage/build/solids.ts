import {
  type BufferAttribute,
  type BufferGeometry,
  CylinderGeometry,
  ExtrudeGeometry,
  InstancedMesh,
  type Material,
  Matrix4,
  Mesh,
  Path,
  Shape,
  Vector2,
} from 'three';
import { RoundedBoxGeometry } from 'three/addons/geometries/RoundedBoxGeometry.js';
import type { Bin } from './bin.ts';

export type Point = readonly [x: number, y: number, z: number];

/** A mesh that throws and takes shadow. */
export function solid(
  geometry: BufferGeometry,
  material: Material | Material[],
  at: Point = [0, 0, 0],
): Mesh {
  const mesh = new Mesh(geometry, material);
  mesh.position.set(...at);
  mesh.castShadow = true;
  mesh.receiveShadow = true;
  return mesh;
}

/** A block with broken edges; `at` is its middle, `edge` the radius. */
export function block(
  bin: Bin,
  [x, y, z]: Point,
  at: Point,
  material: Material,
  edge = Math.min(x, y, z) * 0.08,
): Mesh {
  return solid(bin.own(new RoundedBoxGeometry(x, y, z, 1, edge)), material, at);
}

/** A round bar along the axis, middle at the origin. */
export function barGeometry(bin: Bin, radius: number, length: number, segments = 40): BufferGeometry {
  return bin.own(new CylinderGeometry(radius, radius, length, segments).rotateZ(Math.PI / 2));
}

/** A profile given as [z, y] points, drawn out along the axis, middle at x = 0. */
export function profileGeometry(
  bin: Bin,
  points: readonly (readonly [z: number, y: number])[],
  length: number,
  bevel = 0,
): BufferGeometry {
  const shape = new Shape(points.map(([z, y]) => new Vector2(-z, y)));
  const geometry = drawnOut(bin, shape, length, bevel);
  mapInMetres(geometry, 0.1);
  return geometry;
}

/** The quarter that faces the operator from above is missing from a cut ring. */
const CUT_FROM = Math.PI;
const CUT_TO = 2.5 * Math.PI;

/** A ring about the axis, whole or with a quarter cut out. */
export function ringGeometry(
  bin: Bin,
  inner: number,
  outer: number,
  length: number,
  cut: boolean,
  bevel = 0,
): BufferGeometry {
  const shape = new Shape();
  if (cut) {
    shape.absarc(0, 0, outer, CUT_FROM, CUT_TO, false);
    shape.absarc(0, 0, inner, CUT_TO, CUT_FROM, true);
    shape.closePath();
  } else {
    shape.absarc(0, 0, outer, 0, 2 * Math.PI, false);
    const hole = new Path();
    hole.absarc(0, 0, inner, 0, 2 * Math.PI, true);
    shape.holes.push(hole);
  }
  const geometry = drawnOut(bin, shape, length, bevel, 18);
  smoothRound(geometry);
  return geometry;
}

/** Lets the light run evenly around what was drawn out as a polygon about the axis. */
function smoothRound(geometry: BufferGeometry): void {
  const position = geometry.getAttribute('position') as BufferAttribute;
  const normal = geometry.getAttribute('normal') as BufferAttribute;
  for (let i = 0; i < position.count; i++) {
    const [y, z] = [position.getY(i), position.getZ(i)];
    const radius = Math.hypot(y, z);
    const outward = (normal.getY(i) * y + normal.getZ(i) * z) / radius;
    // Neither the ends nor the faces of a cut point outward or inward.
    if (Math.abs(outward) > 0.95)
      normal.setXYZ(i, 0, (Math.sign(outward) * y) / radius, (Math.sign(outward) * z) / radius);
  }
}

/** A shape in the plane across the axis (its own x pointing away from the operator), drawn out along the axis. */
export function drawnOut(
  bin: Bin,
  shape: Shape,
  length: number,
  bevel = 0,
  curveSegments = 12,
): BufferGeometry {
  const depth = length - 2 * bevel;
  const geometry = new ExtrudeGeometry(shape, {
    depth,
    steps: 1,
    curveSegments,
    bevelEnabled: bevel > 0,
    bevelThickness: bevel,
    bevelSize: bevel,
    bevelOffset: -bevel,
    bevelSegments: 1,
  });
  return bin.own(geometry.translate(0, 0, -depth / 2).rotateY(Math.PI / 2));
}

/** Many of the same at the given places. */
export function many(
  bin: Bin,
  geometry: BufferGeometry,
  material: Material,
  places: readonly Point[],
): InstancedMesh {
  const mesh = bin.own(new InstancedMesh(geometry, material, places.length));
  const matrix = new Matrix4();
  places.forEach((place, i) => {
    mesh.setMatrixAt(i, matrix.makeTranslation(...place));
  });
  mesh.castShadow = true;
  mesh.receiveShadow = true;
  return mesh;
}

/** Lays the texture in metres on each face, so that grain has one size everywhere; `tile` is the size of a repeat. */
export function mapInMetres(geometry: BufferGeometry, tile: number): void {
  const position = geometry.getAttribute('position') as BufferAttribute;
  const normal = geometry.getAttribute('normal') as BufferAttribute;
  const uv = geometry.getAttribute('uv') as BufferAttribute;
  for (let i = 0; i < position.count; i++) {
    const [nx, ny, nz] = [Math.abs(normal.getX(i)), Math.abs(normal.getY(i)), Math.abs(normal.getZ(i))];
    const [u, v] =
      ny >= nx && ny >= nz
        ? [position.getX(i), position.getZ(i)]
        : nx >= nz
          ? [position.getZ(i), position.getY(i)]
          : [position.getX(i), position.getY(i)];
    uv.setXY(i, u / tile, v / tile);
  }
}

/** Lays wires on a coil: side by side along its axis on the flanks, one above the other on its ends; `tile` holds six. */
export function wind(geometry: BufferGeometry, axis: 'x' | 'y' | 'z', tile: number): BufferGeometry {
  const position = geometry.getAttribute('position') as BufferAttribute;
  const normal = geometry.getAttribute('normal') as BufferAttribute;
  const uv = geometry.getAttribute('uv') as BufferAttribute;
  const component = { x: 0, y: 1, z: 2 }[axis];
  for (let i = 0; i < position.count; i++) {
    const along = position.getComponent(i, component);
    const [x, y, z] = [position.getX(i), position.getY(i), position.getZ(i)];
    const onEnd = Math.abs(normal.getComponent(i, component)) > 0.7;
    const v = onEnd ? Math.sqrt(x * x + y * y + z * z - along * along) : along;
    uv.setXY(i, 0, v / tile);
  }
  return geometry;
}

/** `count` numbers evenly from `from` to `to`, both included. */
export function spread(from: number, to: number, count: number): number[] {
  return count === 1
    ? [(from + to) / 2]
    : Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}

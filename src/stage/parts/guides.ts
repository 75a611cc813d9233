import { CircleGeometry, Group } from 'three';
import type { Layout } from '../build/layout.ts';
import type { Shop } from '../build/shop.ts';
import { block, many, type Point, profileGeometry, solid, spread } from '../build/solids.ts';

/** Two profiled rails on the granite, screwed down through counterbored holes. */
export function rails({ bin, m }: Shop, { rail, from, to }: Layout): Group {
  const group = new Group();
  const { width: w, height: h } = rail;
  const half = w / 2;
  const profile = [
    [-half, 0],
    [half, 0],
    [half, 0.3 * h],
    [0.78 * half, 0.42 * h],
    [0.78 * half, 0.62 * h],
    [half, 0.74 * h],
    [half, 0.93 * h],
    [0.88 * half, h],
    [-0.88 * half, h],
    [-half, 0.93 * h],
    [-half, 0.74 * h],
    [-0.78 * half, 0.62 * h],
    [-0.78 * half, 0.42 * h],
    [-half, 0.3 * h],
  ] as const;
  const geometry = profileGeometry(bin, profile, to - from);
  const middle = (from + to) / 2;
  const count = Math.max(Math.round((to - from) / (4 * w)), 2);
  const xs = spread(from + 1.4 * w, to - 1.4 * w, count);
  for (const z of [-rail.z, rail.z]) group.add(solid(geometry, m.polished, [middle, 0, z]));
  const hole = bin.own(new CircleGeometry(0.24 * w, 20).rotateX(-Math.PI / 2));
  const places = [-rail.z, rail.z].flatMap((z) => xs.map((x): Point => [x, h + 2e-4, z]));
  const holes = many(bin, hole, m.hole, places);
  holes.castShadow = false;
  group.add(holes);
  return group;
}

/** The carriages under the table, with their end seals; they go where the table goes. */
export function carriages({ bin, m }: Shop, { rail, plateBottom }: Layout): Group {
  const group = new Group();
  const { carriage, width: w } = rail;
  const middle = rail.top - carriage.height / 2;
  const seal = 0.09 * carriage.length;
  for (const z of [-rail.z, rail.z])
    for (const x of rail.carriages) {
      const body = carriage.length - 2 * seal;
      group.add(block(bin, [body, carriage.height, carriage.width], [x, middle, z], m.steel, 0.05 * w));
      for (const side of [-1, 1])
        group.add(
          block(
            bin,
            [seal, 0.94 * carriage.height, 0.96 * carriage.width],
            [x + (side * (carriage.length - seal)) / 2, middle, z],
            m.rubber,
            0.05 * w,
          ),
        );
      const riser = plateBottom - rail.top;
      if (riser > 5e-4)
        group.add(
          block(
            bin,
            [0.92 * body, riser, 0.9 * carriage.width],
            [x, rail.top + riser / 2, z],
            m.anodisedFine,
          ),
        );
    }
  return group;
}

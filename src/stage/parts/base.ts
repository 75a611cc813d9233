import { CylinderGeometry, Group } from 'three';
import { RoundedBoxGeometry } from 'three/addons/geometries/RoundedBoxGeometry.js';
import type { Layout } from '../build/layout.ts';
import type { Shop } from '../build/shop.ts';
import { many, mapInMetres, type Point, solid, spread } from '../build/solids.ts';

/** Size of a repeat of the granite's grain, m. */
const GRAIN_TILE = 0.2;

/** The granite, its top at y = 0. */
export function graniteBase({ bin, m }: Shop, { base }: Layout): Group {
  const group = new Group();
  const [length, width] = [base.xMax - base.xMin, base.zMax - base.zMin];
  const geometry = bin.own(
    new RoundedBoxGeometry(length, base.height, width, 2, Math.min(0.008, 0.04 * base.height)),
  );
  mapInMetres(geometry, GRAIN_TILE);
  group.add(
    solid(geometry, m.granite, [(base.xMin + base.xMax) / 2, -base.height / 2, (base.zMin + base.zMax) / 2]),
  );
  return group;
}

/** Height of the feet or mounts under the granite. */
export const footHeight = ({ base }: Layout): number => Math.max(0.28 * base.height, 0.02);

/** What the granite stands on: levelling feet, or rubber mounts that let it swing. They stay where they are. */
export function feet({ bin, m }: Shop, plan: Layout, soft: boolean): Group {
  const { base } = plan;
  const group = new Group();
  const h = footHeight(plan);
  const r = Math.min(0.14 * (base.zMax - base.zMin), 0.9 * h);
  const inset = 1.5 * r;
  const xs = spread(base.xMin + inset, base.xMax - inset, base.xMax - base.xMin > 2 ? 3 : 2);
  const zs = [base.zMin + inset, base.zMax - inset];
  const at = (y: number): Point[] => xs.flatMap((x) => zs.map((z): Point => [x, y - base.height, z]));
  const disc = (radius: number, height: number) => bin.own(new CylinderGeometry(radius, radius, height, 32));
  if (soft) {
    const ring = 0.8 * h;
    for (const i of [0, 1, 2])
      group.add(
        many(bin, disc(i === 1 ? 0.78 * r : r, ring / 3), m.rubber, at(-0.1 * h - (ring * (i + 0.5)) / 3)),
      );
    group.add(many(bin, disc(1.06 * r, 0.1 * h), m.steel, at(-0.05 * h)));
    group.add(many(bin, disc(1.15 * r, 0.1 * h), m.darkSteel, at(-0.95 * h)));
  } else {
    group.add(many(bin, disc(0.35 * r, 0.7 * h), m.steel, at(-0.35 * h)));
    group.add(
      many(bin, bin.own(new CylinderGeometry(0.6 * r, r, 0.35 * h, 32)), m.darkSteel, at(-0.825 * h)),
    );
  }
  return group;
}

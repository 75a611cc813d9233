import { CircleGeometry, Group, type Mesh } from 'three';
import { present } from '../../../shared/core/at.ts';
import type { Layout } from '../build/layout.ts';
import { apart } from '../build/merge.ts';
import type { Shop } from '../build/shop.ts';
import { block, many, type Point, spread } from '../build/solids.ts';
import { bolts } from './bolts.ts';
import { phantom, section } from './cut.ts';
import { carriages } from './guides.ts';
import { payload } from './payload.ts';

export interface Table {
  readonly group: Group;
  /** Whatever has the table's temperature. */
  readonly warm: readonly Mesh[];
  setCut(cut: boolean): void;
}

/** The table with its carriages and payload, its middle at x = 0. `cutAt`: what lies in front of this z opens; null: nothing. */
export function table(shop: Shop, plan: Layout, cutAt: number | null): Table {
  const { bin, m } = shop;
  const group = new Group();
  const { plate, plateBottom } = plan;
  const top = plateBottom + plate.height;
  group.add(carriages(shop, plan));

  const edge = Math.min(0.06 * plate.height, 0.003);
  const whole = apart(new Group());
  const plateMesh = block(
    bin,
    [plate.length, plate.height, plate.width],
    [0, plateBottom + plate.height / 2, 0],
    m.anodised,
    edge,
  );
  whole.add(plateMesh, plateScrews(shop, plan, top), threadedHoles(shop, plan, top));
  const load = plan.payload ? payload(shop, plan.payload, top) : null;
  if (load) whole.add(load.group);
  group.add(whole);

  const opened = apart(new Group());
  opened.visible = false;
  const warm: Mesh[] = [plateMesh];
  if (cutAt !== null) {
    const rear = section(shop, plate.length, plate.height, -plate.width / 2, cutAt, plateBottom, m.anodised);
    opened.add(rear, phantom(shop, plate.length, plate.height, cutAt, plate.width / 2, plateBottom));
    warm.push(rear);
    if (load && plan.payload) opened.add(load.opened(cutAt));
    group.add(opened);
  }
  return {
    group,
    warm,
    setCut(cut) {
      if (cutAt === null) return;
      opened.visible = cut;
      whole.visible = !cut;
    },
  };
}

/** Screws that hold the plate to its carriages. */
function plateScrews(shop: Shop, { rail, plate }: Layout, top: number): Group {
  const radius = 0.2 * rail.width;
  const places = rail.carriages.flatMap((x) =>
    [-rail.z, rail.z].flatMap((z) =>
      [-1, 1].flatMap((sx) =>
        [-1, 1].map((sz): Point => {
          const across = Math.min(0.36 * rail.carriage.width, plate.width / 2 - Math.abs(z) - 1.6 * radius);
          return [x + sx * 0.26 * rail.carriage.length, top, z + sz * across];
        }),
      ),
    ),
  );
  return bolts(shop, radius, places);
}

/** A grid of threaded holes, 25 mm apart or what fits. */
function threadedHoles({ bin, m }: Shop, { plate, rail }: Layout, top: number): Mesh {
  const [nx, nz] = [plate.length, plate.width].map((size) =>
    Math.min(Math.max(Math.floor(size / 0.025), 2), 24),
  );
  const free = plate.width / 2 - 0.012;
  const places = spread(-plate.length / 2 + 0.012, plate.length / 2 - 0.012, present(nx)).flatMap((x) =>
    spread(-free, free, present(nz)).map((z): Point => [x, top + 2e-4, z]),
  );
  const clear = places.filter(
    ([x, , z]) =>
      !(
        Math.abs(Math.abs(z) - rail.z) < 0.6 * rail.carriage.width &&
        rail.carriages.some((c) => Math.abs(x - c) < 0.42 * rail.carriage.length)
      ),
  );
  const holes = many(bin, bin.own(new CircleGeometry(0.0024, 14).rotateX(-Math.PI / 2)), m.hole, clear);
  holes.castShadow = false;
  return holes;
}

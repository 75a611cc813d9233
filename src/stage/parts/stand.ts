import { ExtrudeGeometry, Group, Shape, Vector2 } from 'three';
import { at } from '../../../shared/core/at.ts';
import type { Layout } from '../build/layout.ts';
import type { Shop } from '../build/shop.ts';
import { block, solid } from '../build/solids.ts';
import { footHeight } from './base.ts';

/** Below this rise the machine stands on its feet alone. */
const LEVEL = 0.02;

interface Standing {
  /** Height of the floor, in coordinates whose origin is the machine's. */
  readonly floor: number;
  readonly group: Group;
}

/** A welded stand of two cheeks that holds an inclined machine; its own x stays level. */
export function stand({ bin, m }: Shop, plan: Layout, inclination: number): Standing {
  const { base } = plan;
  const group = new Group();
  const under = -base.height - footHeight(plan);
  if (Math.abs(inclination) < LEVEL) return { floor: under, group };

  const [cos, sin] = [Math.cos(inclination), Math.sin(inclination)];
  const turned = (x: number, y: number) => new Vector2(x * cos - y * sin, x * sin + y * cos);
  const length = base.xMax - base.xMin;
  const edge = [turned(base.xMin, under), turned(base.xMax, under)];
  const floor =
    Math.min(...edge.map((p) => p.y), turned(base.xMin, 0).y, turned(base.xMax, 0).y) - 0.04 * length;
  const depth = 0.3 * length * Math.abs(sin);
  const footprint = edge.flatMap((p) => [
    new Vector2(p.x, floor),
    new Vector2(p.x + Math.sign(sin) * depth, floor),
  ]);
  const outline = hull([...edge, ...footprint]);

  const thick = Math.max(0.012 * length, 0.006);
  const cheek = bin.own(
    new ExtrudeGeometry(new Shape(outline), { depth: thick, bevelEnabled: false }).translate(
      0,
      0,
      -thick / 2,
    ),
  );
  const width = base.zMax - base.zMin;
  for (const z of [base.zMin + 0.16 * width, base.zMax - 0.16 * width])
    group.add(solid(cheek, m.paint, [0, 0, z]));

  const bearer = block(bin, [length, thick, 0.9 * width], [0, 0, 0], m.paint, 0.1 * thick);
  const middle = turned((base.xMin + base.xMax) / 2, under - thick / 2);
  bearer.position.set(middle.x, middle.y, (base.zMin + base.zMax) / 2);
  bearer.rotation.z = inclination;
  const xs = outline.map((p) => p.x);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  group.add(
    bearer,
    block(
      bin,
      [right - left + 2 * thick, thick, width],
      [(left + right) / 2, floor + thick / 2, (base.zMin + base.zMax) / 2],
      m.paint,
      0.1 * thick,
    ),
  );
  return { floor, group };
}

/** Convex hull, counter-clockwise (Andrew's monotone chain, 1979). */
function hull(points: Vector2[]): Vector2[] {
  const sorted = points.sort((a, b) => a.x - b.x || a.y - b.y);
  const half = (run: Vector2[]) => {
    const chain: Vector2[] = [];
    for (const p of run) {
      while (chain.length > 1 && turn(at(chain, chain.length - 2), at(chain, chain.length - 1), p) <= 0)
        chain.pop();
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half([...sorted].reverse())];
}

function turn(a: Vector2, b: Vector2, c: Vector2): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

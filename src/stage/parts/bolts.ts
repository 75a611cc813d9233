import { CylinderGeometry, Group, LatheGeometry, Vector2 } from 'three';
import { present } from '../../../shared/core/at.ts';
import type { Shop } from '../build/shop.ts';
import { many, type Point } from '../build/solids.ts';

/** Socket head screws standing upright at the given places; `radius` of the head. */
export function bolts({ bin, m }: Shop, radius: number, places: readonly Point[]): Group {
  const group = new Group();
  const h = 0.55 * radius;
  const head = [
    [0.5, h],
    [0.86, h],
    [1, 0.8 * h],
    [1, -0.2 * h],
  ].map(([r, y], i) => new Vector2(present(r) * radius, i < 2 ? h : present(y)));
  group.add(many(bin, bin.own(new LatheGeometry(head.reverse(), 14)), m.darkSteel, places));
  const socket = bin.own(new CylinderGeometry(0.52 * radius, 0.52 * radius, 0.9 * h, 6));
  const sockets = many(bin, socket, m.hole, places);
  sockets.castShadow = false;
  group.add(sockets);
  return group;
}

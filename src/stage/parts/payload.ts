import { Group, LatheGeometry, Vector2 } from 'three';
import type { Size } from '../../../shared/axis/motorSize.ts';
import { present } from '../../../shared/core/at.ts';
import type { Shop } from '../build/shop.ts';
import { block, many, type Point, spread } from '../build/solids.ts';
import { bolts } from './bolts.ts';
import { phantom, section } from './cut.ts';

interface Payload {
  readonly group: Group;
  /** The same, without what lies in front of `cutAt`. */
  opened(cutAt: number): Group;
}

/** Pitch and radius of a mould, m: cups for lenses of 14 mm. */
const MOULD_PITCH = 0.026;
const MOULD_RADIUS = 0.0098;
const MAX_MOULDS = 240;

/** The mould carrier, a ground steel block of the payload's mass, with rows of contact-lens moulds on it. */
export function payload(shop: Shop, size: Size, bottom: number): Payload {
  const { bin, m } = shop;
  const { length, height, width } = size;
  const group = new Group();
  group.add(
    block(bin, [length, height, width], [0, bottom + height / 2, 0], m.steel, Math.min(0.0015, 0.1 * height)),
  );
  const top = bottom + height;
  const places = mouldPlaces(size, top);
  group.add(moulds(shop, places, size));
  const corner = Math.min(0.0032, 0.06 * width);
  const inset = 2 * corner;
  group.add(
    bolts(
      shop,
      corner,
      [-1, 1].flatMap((x) =>
        [-1, 1].map((z): Point => [x * (length / 2 - inset), top, z * (width / 2 - inset)]),
      ),
    ),
  );
  return {
    group,
    opened(cutAt) {
      const rest = new Group();
      const zTo = Math.min(cutAt, width / 2);
      if (zTo > -width / 2) rest.add(section(shop, length, height, -width / 2, zTo, bottom, m.steel));
      if (zTo < width / 2)
        rest.add(phantom(shop, length, height, Math.max(cutAt, -width / 2), width / 2, bottom));
      const kept = places.filter(([, , z]) => z + MOULD_RADIUS <= cutAt);
      if (kept.length > 0) rest.add(moulds(shop, kept, size));
      return rest;
    },
  };
}

function mouldPlaces({ length, width }: Size, top: number): Point[] {
  const pitch = Math.max(MOULD_PITCH, Math.sqrt((length * width) / MAX_MOULDS));
  const along = Math.max(Math.floor((length - 0.012) / pitch), 1);
  const across = Math.max(Math.floor((width - 0.012) / pitch), 1);
  const run = (count: number) => spread((-(count - 1) * pitch) / 2, ((count - 1) * pitch) / 2, count);
  return run(along).flatMap((x) => run(across).map((z): Point => [x, top, z]));
}

/** Flanged cups with a concave optical face and a thin film of lens in it. */
function moulds({ bin, m }: Shop, places: readonly Point[], { length, width }: Size): Group {
  const group = new Group();
  const r = Math.min(MOULD_RADIUS, 0.42 * Math.min(length, width));
  const cup = [
    [0, 0.22],
    [0.35, 0.27],
    [0.6, 0.42],
    [0.72, 0.62],
    [0.82, 0.62],
    [0.84, 0.3],
    [1, 0.28],
    [1, 0],
  ].map(([x, y]) => new Vector2(present(x) * r, present(y) * r));
  group.add(many(bin, bin.own(new LatheGeometry(cup.reverse(), 18)), m.mould, places));
  const film = [
    [0, 0.27],
    [0.35, 0.32],
    [0.6, 0.47],
    [0.7, 0.6],
  ].map(([x, y]) => new Vector2(present(x) * r, present(y) * r));
  const lenses = many(bin, bin.own(new LatheGeometry(film.reverse(), 16)), m.lens, places);
  lenses.castShadow = false;
  group.add(lenses);
  return group;
}

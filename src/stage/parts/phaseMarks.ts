import { type BufferGeometry, Group, type Matrix4 } from 'three';
import { PHASES } from '../build/electrics.ts';
import { apart } from '../build/merge.ts';
import type { Shop } from '../build/shop.ts';
import { many } from '../build/solids.ts';

/** A letter on each coil of a motor: which phase it belongs to, without colour. `places` coil by coil. */
export function phaseMarks({ bin, m }: Shop, plate: BufferGeometry, places: readonly Matrix4[]): Group {
  const group = apart(new Group());
  bin.own(plate);
  PHASES.forEach((phase, k) => {
    const own = places.filter((_, coil) => coil % PHASES.length === k);
    const marks = many(
      bin,
      plate,
      m.phases[phase],
      own.map(() => [0, 0, 0] as const),
    );
    own.forEach((place, i) => {
      marks.setMatrixAt(i, place);
    });
    marks.castShadow = false;
    group.add(marks);
  });
  return group;
}

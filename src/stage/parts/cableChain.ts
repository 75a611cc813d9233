import { Group, type InstancedMesh, Object3D } from 'three';
import { RoundedBoxGeometry } from 'three/addons/geometries/RoundedBoxGeometry.js';
import type { Layout } from '../build/layout.ts';
import type { Shop } from '../build/shop.ts';
import { block, many, type Point } from '../build/solids.ts';

export interface CableChain {
  readonly fixed: Group;
  /** Bracket on the table. */
  readonly moving: Group;
  pose(tablePosition: number): void;
}

/**
 * The chain that carries the cables of a moving coil: from a bracket at mid travel along the tray, around a bend of constant
 * radius and back to the table. Its length is constant, so the bend runs at half the table's speed.
 */
export function cableChain({ bin, m }: Shop, plan: Layout): CableChain | null {
  if (!plan.chain) return null;
  const { radius, width, z } = plan.chain;
  const { travelMin, travelMax, plate, plateBottom } = plan;
  const thick = 0.42 * radius;
  const pitch = 0.62 * radius;
  const middle = (travelMin + travelMax) / 2;
  const straight = (travelMax - travelMin) / 2 + 2 * pitch;
  const total = straight + Math.PI * radius;
  const count = Math.ceil(total / pitch);
  const low = 0.003 + thick / 2;

  const fixed = new Group();
  const tray = (travelMax - travelMin) / 2 + radius + 3 * pitch;
  fixed.add(
    block(bin, [tray, 0.003, 1.3 * width], [middle - tray / 2 + pitch, 0.0015, z], m.anodisedFine, 5e-4),
  );
  const link = bin.own(new RoundedBoxGeometry(0.86 * pitch, thick, width, 1, 0.16 * thick));
  const links: InstancedMesh = many(
    bin,
    link,
    m.chain,
    Array.from({ length: count }, (): Point => [0, 0, 0]),
  );
  links.frustumCulled = false;
  fixed.add(links);

  const moving = new Group();
  const top = low + 2 * radius;
  const reach = -plate.width / 2 - z;
  // A shelf under the chain's end, and a cheek that brings it to the plate wherever that is.
  const shelf = 0.22 * thick;
  const shelfY = top - 0.5 * thick - shelf / 2;
  moving.add(block(bin, [2.4 * pitch, shelf, width + reach], [0, shelfY, z + reach / 2], m.anodisedFine));
  const plateMiddle = plateBottom + plate.height / 2;
  const cheek = Math.abs(shelfY - plateMiddle) + shelf;
  moving.add(
    block(
      bin,
      [2.4 * pitch, cheek, 0.5 * thick],
      [0, (shelfY + plateMiddle) / 2, -plate.width / 2],
      m.anodisedFine,
    ),
  );

  const dummy = new Object3D();
  return {
    fixed,
    moving,
    pose(tablePosition) {
      const bend = (middle + tablePosition + Math.PI * radius - total) / 2;
      const lower = middle - bend;
      const arc = Math.PI * radius;
      for (let i = 0; i < count; i++) {
        const s = ((i + 0.5) * total) / count;
        if (s < lower) dummy.position.set(middle - s, low, z);
        else if (s < lower + arc) {
          const angle = (s - lower) / radius;
          dummy.position.set(bend - radius * Math.sin(angle), low + radius * (1 - Math.cos(angle)), z);
        } else dummy.position.set(bend + (s - lower - arc), low + 2 * radius, z);
        const turned = Math.min(Math.max((s - lower) / radius, 0), Math.PI);
        dummy.rotation.set(0, 0, -turned);
        dummy.updateMatrix();
        links.setMatrixAt(i, dummy.matrix);
      }
      links.instanceMatrix.needsUpdate = true;
    },
  };
}

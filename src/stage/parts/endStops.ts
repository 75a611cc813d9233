import { CylinderGeometry, Group } from 'three';
import type { Layout } from '../build/layout.ts';
import type { Shop } from '../build/shop.ts';
import { block, solid } from '../build/solids.ts';

/** The model's buffers begin this far beyond the travel limits, m. */
const BUFFER_GAP = 3e-3;

/** Rubber buffers on the rails: their faces stand where the carriages meet them. */
export function endStops({ bin, m }: Shop, { travelMin, travelMax, rail }: Layout): Group {
  const group = new Group();
  const { width: w, carriage } = rail;
  const outer = Math.max(...rail.carriages) + carriage.length / 2;
  const y = rail.top - 0.42 * carriage.height;
  const thick = 0.7 * w;
  for (const side of [-1, 1]) {
    const face = (side > 0 ? travelMax : travelMin) + side * (outer + BUFFER_GAP);
    const long = 0.5 * w;
    const buffer = bin.own(new CylinderGeometry(0.3 * w, 0.38 * w, long, 28).rotateZ((side * Math.PI) / 2));
    for (const z of [-rail.z, rail.z]) {
      for (const across of [-0.5, 0.5])
        group.add(solid(buffer, m.rubber, [face + (side * long) / 2, y, z + across * carriage.width]));
      const height = y + 0.5 * w;
      const size = [thick, height, 1.9 * carriage.width] as const;
      group.add(block(bin, size, [face + side * (long + thick / 2), height / 2, z], m.anodisedFine));
    }
  }
  return group;
}

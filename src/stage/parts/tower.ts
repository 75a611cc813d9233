import { CylinderGeometry, Group, type Mesh, MeshStandardMaterial, Vector3 } from 'three';
import type { Layout } from '../build/layout.ts';
import type { Shop } from '../build/shop.ts';
import { solid } from '../build/solids.ts';

export type RunState = 'paused' | 'running' | 'tripped';

export interface Tower {
  readonly group: Group;
  /** Seen from its foot. */
  readonly top: Vector3;
  show(state: RunState): void;
}

/** Lamps from the top, in the colours of IEC 60204-1: red fault, white for nothing special, green at work. */
const LAMPS: readonly [state: RunState, colour: string][] = [
  ['tripped', '#ff2a12'],
  ['paused', '#f3f6ff'],
  ['running', '#19e06a'],
];

/** The signal tower at the rear of the base: which lamp burns says it twice, by place and by colour. */
export function tower({ bin, m }: Shop, { base }: Layout, inclination: number): Tower {
  const group = new Group();
  const r = Math.min(Math.max(0.012 * (base.xMax - base.xMin), 0.006), 0.035);
  // On the end that stands higher, and upright however the machine is inclined.
  const x = inclination >= 0 ? base.xMax - 2.6 * r : base.xMin + 2.6 * r;
  group.position.set(x, 0, base.zMin + 2.6 * r);
  group.rotation.z = -inclination;
  const stack = (radius: number, height: number, y: number, material: Mesh['material']) => {
    const mesh = solid(bin.own(new CylinderGeometry(radius, radius, height, 32)), material, [
      0,
      y + height / 2,
      0,
    ]);
    group.add(mesh);
    return mesh;
  };
  stack(1.4 * r, 0.5 * r, 0, m.darkSteel);
  stack(0.3 * r, 4 * r, 0.5 * r, m.steel);
  stack(1.02 * r, 0.5 * r, 4.5 * r, m.rubber);
  const lamps = LAMPS.map(([state, colour], i) => {
    const glass = bin.own(new MeshStandardMaterial({ color: colour, roughness: 0.25, emissive: colour }));
    stack(r, 1.7 * r, (5 + 1.8 * (2 - i)) * r, glass);
    return { state, glass, colour };
  });
  stack(1.02 * r, 0.4 * r, 10.4 * r, m.rubber);
  return {
    group,
    top: new Vector3(0, 10.8 * r, 0),
    show(now) {
      for (const { state, glass, colour } of lamps) {
        const burns = state === now;
        glass.color.set(colour).multiplyScalar(burns ? 1 : 0.16);
        glass.emissiveIntensity = burns ? 1.5 : 0;
      }
    },
  };
}

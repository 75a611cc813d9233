import { BufferGeometry, Float32BufferAttribute, Group, type Mesh } from 'three';
import { at } from '../../../shared/core/at.ts';
import type { Layout } from '../build/layout.ts';
import { apart } from '../build/merge.ts';
import type { Shop } from '../build/shop.ts';
import { solid } from '../build/solids.ts';

/** Bellows over the magnets, on either side of the coil units. */
export interface Cover {
  readonly group: Group;
  /** Stretches one and folds the other, for units at this place. */
  pose(motorPosition: number): void;
}

/** A line across the machine, from its rear foot over the top to its front foot: [z, y]. */
type Profile = readonly (readonly [z: number, y: number])[];

/** Length of a fold where all of the travel lies on one side, m. */
const FOLD = 0.014;
/** Depth of a fold, m. */
const DEEP = 0.003;

/** Null where no magnets lie open. */
export function cover(shop: Shop, plan: Layout): Cover | null {
  const outside = profileOf(plan, DEEP);
  const inside = profileOf(plan, 0);
  if (!outside || !inside) return null;
  const { from, to, units, motor } = plan;
  const group = new Group();
  const folds = Math.max(Math.round((to - from) / FOLD), 4);
  const geometry = shop.bin.own(bellows(outside, inside, folds));
  const spans = plan.tracks.map((z, track) => {
    const own = units.filter((unit) => unit.track === track).map(({ x }) => x);
    const [left, right] = [0, 1].map(() => apart(solid(geometry, shop.m.bellows, [0, 0, z]))) as [Mesh, Mesh];
    group.add(left, right);
    return {
      left,
      right,
      low: Math.min(...own) - motor.length / 2,
      high: Math.max(...own) + motor.length / 2,
    };
  });
  return {
    group,
    pose(motorPosition) {
      for (const { left, right, low, high } of spans) {
        stretch(left, from, motorPosition + low);
        stretch(right, motorPosition + high, to);
      }
    },
  };
}

function stretch(mesh: Mesh, from: number, to: number): void {
  mesh.position.x = from;
  mesh.scale.x = Math.max(to - from, 1e-3);
}

/** What a bellows of this form spans, `deep` metres outside of its least. */
function profileOf({ motor, driveHeight }: Layout, deep: number): Profile | null {
  switch (motor.driveType) {
    case 'flat': {
      const half = 0.58 * motor.unitWidth + deep;
      const top = driveHeight + motor.backIron + motor.magnet.height + 0.4 * motor.unitHeight + deep;
      return hood(half, driveHeight, top);
    }
    case 'u-channel': {
      const half = motor.channelWidth / 2 + 0.001 + deep;
      const top = driveHeight + motor.channelHeight + 0.06 * motor.magnet.height + deep;
      return hood(half, driveHeight + 0.7 * motor.channelHeight, top);
    }
    case 'tubular': {
      const radius = 1.25 * motor.shaftRadius + deep;
      return Array.from({ length: 25 }, (_, i) => {
        const angle = (2 * Math.PI * i) / 24;
        return [-radius * Math.sin(angle), driveHeight - radius * Math.cos(angle)] as const;
      });
    }
    case 'screw':
      return null;
  }
}

function hood(half: number, low: number, top: number): Profile {
  const edge = 0.25 * (top - low);
  return [
    [-half, low],
    [-half, top - edge],
    [-half + edge, top],
    [half - edge, top],
    [half, top - edge],
    [half, low],
  ];
}

/** Folds of one metre's length in all, from x = 0, each flank with light of its own. */
function bellows(outside: Profile, inside: Profile, folds: number): BufferGeometry {
  const positions: number[] = [];
  const point = (k: number, j: number) => {
    const [z, y] = at(k % 2 === 0 ? outside : inside, j);
    return [k / (2 * folds), y, z];
  };
  for (let k = 0; k < 2 * folds; k++)
    for (let j = 0; j < outside.length - 1; j++) {
      const [a, b, c, d] = [point(k, j), point(k + 1, j), point(k + 1, j + 1), point(k, j + 1)];
      positions.push(...a, ...b, ...c, ...a, ...c, ...d);
    }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new Float32BufferAttribute(positions, 3));
  geometry.setAttribute('uv', new Float32BufferAttribute(new Float32Array((positions.length / 3) * 2), 2));
  geometry.computeVertexNormals();
  return geometry;
}

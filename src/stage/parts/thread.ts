import { BufferGeometry, Float32BufferAttribute } from 'three';
import type { Bin } from '../build/bin.ts';

/** Over one pitch: share of the pitch and depth of the groove, a crest followed by a round-bottomed groove. */
const PROFILE: readonly (readonly [share: number, depth: number])[] = [
  [0, 0],
  [0.44, 0],
  [0.56, 0.75],
  [0.72, 1],
  [0.88, 0.75],
  [1, 0],
];

/** More turns than this would be finer than the screen: the screw is then drawn plain. */
const MAX_TURNS = 1500;

/**
 * Surface of a right-hand screw along x, middle at the origin. Positive turns about x carry a nut towards −x. Fast leads are
 * cut with several starts, so that grooves keep a usual size.
 */
export function threadGeometry(
  bin: Bin,
  radius: number,
  lead: number,
  length: number,
): BufferGeometry | null {
  const starts = Math.min(Math.max(Math.round(lead / radius), 1), 4);
  const pitch = lead / starts;
  const turns = Math.ceil(length / pitch) + 1;
  if (turns > MAX_TURNS) return null;
  const around = Math.min(Math.max(Math.round(2400 / turns), 8), 18);
  const depth = Math.min(0.3 * pitch, 0.16 * radius);
  const rows = PROFILE.length;
  const positions: number[] = [];
  const indices: number[] = [];
  const steps = Math.ceil(((length + lead) / lead) * around);
  for (let start = 0; start < starts; start++)
    for (let step = 0; step <= steps; step++) {
      const angle = (2 * Math.PI * step) / around;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      for (const [share, deep] of PROFILE) {
        const x = (lead * step) / around - lead + (start + share) * pitch;
        const r = radius - deep * depth;
        positions.push(Math.min(Math.max(x, 0), length) - length / 2, r * cos, r * sin);
      }
      if (step === steps) continue;
      const at = positions.length / 3 - rows;
      for (let k = 0; k < rows - 1; k++)
        indices.push(at + k, at + k + rows, at + k + 1, at + k + 1, at + k + rows, at + k + rows + 1);
    }
  const geometry = bin.own(new BufferGeometry());
  geometry.setAttribute('position', new Float32BufferAttribute(positions, 3));
  geometry.setAttribute('uv', new Float32BufferAttribute(new Float32Array((positions.length / 3) * 2), 2));
  geometry.setIndex(indices);
  geometry.computeVertexNormals();
  return geometry;
}

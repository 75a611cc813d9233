import { Path, Shape } from 'three';

/** A rounded rectangle with a rounded window: a coil seen along its axis. */
export function racetrack(length: number, width: number, limb: number): Shape {
  const shape = rounded(new Shape(), length, width, Math.min(limb, length / 2, width / 2));
  shape.holes.push(rounded(new Path(), length - 2 * limb, width - 2 * limb, 0.15 * limb));
  return shape;
}

export function rounded<P extends Path>(path: P, length: number, width: number, radius: number): P {
  const [x, y, r] = [length / 2, width / 2, radius];
  path.moveTo(-x + r, -y).lineTo(x - r, -y);
  path.absarc(x - r, -y + r, r, -Math.PI / 2, 0, false);
  path.lineTo(x, y - r);
  path.absarc(x - r, y - r, r, 0, Math.PI / 2, false);
  path.lineTo(-x + r, y);
  path.absarc(-x + r, y - r, r, Math.PI / 2, Math.PI, false);
  path.lineTo(-x, -y + r);
  path.absarc(-x + r, -y + r, r, Math.PI, 1.5 * Math.PI, false);
  return path;
}

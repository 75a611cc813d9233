import type { PerspectiveCamera, Vector3 } from 'three';
import type { Machine } from './machine.ts';
import type { ScreenPoint } from './overlay.ts';

/** Of a picture, CSS pixels. */
export interface PictureSize {
  width: number;
  height: number;
}

/** Where a point of the machine appears on a picture of this size, CSS pixels; `at` is changed. */
export function placeOnScreen(
  { frame }: Machine,
  camera: PerspectiveCamera,
  at: Vector3,
  { width, height }: PictureSize,
  into: ScreenPoint,
): void {
  frame.localToWorld(at).project(camera);
  into.x = (0.5 + 0.5 * at.x) * width;
  into.y = (0.5 - 0.5 * at.y) * height;
}

/** Of a picture of this height, at a point of the machine; `at` is changed. */
export function pixelsPerMetreAt(
  { frame }: Machine,
  camera: PerspectiveCamera,
  at: Vector3,
  { height }: PictureSize,
): number {
  const distance = camera.position.distanceTo(frame.localToWorld(at));
  return height / (2 * distance * Math.tan((camera.fov * Math.PI) / 360));
}

import {
  BufferGeometry,
  Float32BufferAttribute,
  InstancedMesh,
  type Material,
  Mesh,
  type Object3D,
} from 'three';
import { at } from '../../../shared/core/at.ts';
import type { Bin } from './bin.ts';

const APART = 'apart';

/** Keeps an object out of merging: it moves, hides or changes its material by itself. */
export function apart<T extends Object3D>(object: T): T {
  object.userData[APART] = true;
  return object;
}

/**
 * Replaces the plain meshes under `root` by one mesh for each material: a machine has hundreds of parts, and each would cost
 * the page a call per frame. What stands apart keeps its place, its own parts merged within it.
 */
export function mergeStill(root: Object3D, bin: Bin): void {
  root.updateMatrixWorld(true);
  mergeWithin(root, bin);
}

function mergeWithin(boundary: Object3D, bin: Bin): void {
  const batches = new Map<string, Mesh<BufferGeometry, Material>[]>();
  const visit = (object: Object3D) => {
    for (const child of [...object.children]) {
      if (child.userData[APART]) mergeWithin(child, bin);
      else {
        if (isPlain(child)) {
          const key = `${child.material.uuid} ${child.castShadow} ${child.receiveShadow}`;
          batches.set(key, [...(batches.get(key) ?? []), child]);
        }
        visit(child);
      }
    }
  };
  visit(boundary);
  const toBoundary = boundary.matrixWorld.clone().invert();
  for (const meshes of batches.values()) {
    if (meshes.length < 2) continue;
    const first = at(meshes, 0);
    const parts = meshes.map((mesh) => {
      const part = mesh.geometry.index ? mesh.geometry.toNonIndexed() : mesh.geometry.clone();
      return part.applyMatrix4(toBoundary.clone().multiply(mesh.matrixWorld));
    });
    const merged = new Mesh(bin.own(joined(parts)), first.material as Material);
    merged.castShadow = first.castShadow;
    merged.receiveShadow = first.receiveShadow;
    for (const mesh of meshes) mesh.removeFromParent();
    boundary.add(merged);
  }
}

function isPlain(object: Object3D): object is Mesh<BufferGeometry, Material> {
  const mesh = object instanceof Mesh && !(object instanceof InstancedMesh);
  return mesh && !Array.isArray(object.material) && object.children.length === 0;
}

function joined(parts: readonly BufferGeometry[]): BufferGeometry {
  const whole = new BufferGeometry();
  for (const [name, size] of [
    ['position', 3],
    ['normal', 3],
    ['uv', 2],
  ] as const) {
    const arrays = parts.map((part) => part.getAttribute(name).array);
    const all = new Float32Array(arrays.reduce((sum, array) => sum + array.length, 0));
    let at = 0;
    for (const array of arrays) {
      all.set(array, at);
      at += array.length;
    }
    whole.setAttribute(name, new Float32BufferAttribute(all, size));
  }
  return whole;
}

import {
  BufferGeometry,
  type Color,
  Float32BufferAttribute,
  Group,
  Mesh,
  MeshStandardMaterial,
  SphereGeometry,
  type Vector3,
} from 'three';
import { at as elementAt } from '../../shared/core/at.ts';
import { Bin } from './build/bin.ts';
import type { Hold } from './grab.ts';

const TURNS = 15;
const STEPS = 16 * TURNS;
const AROUND = 7;

/** The spring between table and hand, with a knob where the hand is. */
export class HandSpring {
  readonly group = new Group();
  readonly #bin = new Bin();
  readonly #material = this.#bin.own(
    new MeshStandardMaterial({ roughness: 0.35, metalness: 0.3, emissiveIntensity: 0.25 }),
  );
  readonly #geometry = this.#bin.own(new BufferGeometry());
  readonly #knob = new Mesh(this.#bin.own(new SphereGeometry(1, 28, 18)), this.#material);
  readonly #positions = new Float32Array((STEPS + 1) * AROUND * 3);
  readonly #normals = new Float32Array((STEPS + 1) * AROUND * 3);

  constructor() {
    this.#geometry.setAttribute('position', new Float32BufferAttribute(this.#positions, 3));
    this.#geometry.setAttribute('normal', new Float32BufferAttribute(this.#normals, 3));
    const indices: number[] = [];
    for (let i = 0; i < STEPS; i++)
      for (let k = 0; k < AROUND; k++) {
        const [a, b] = [i * AROUND + k, i * AROUND + ((k + 1) % AROUND)];
        indices.push(a, b, a + AROUND, b, b + AROUND, a + AROUND);
      }
    this.#geometry.setIndex(indices);
    const wire = new Mesh(this.#geometry, this.#material);
    wire.frustumCulled = false;
    wire.castShadow = this.#knob.castShadow = true;
    this.group.add(wire, this.#knob);
    this.group.visible = false;
  }

  setColour(colour: Color): void {
    this.#material.color.copy(colour);
    this.#material.emissive.copy(colour);
  }

  /** `table` and the hold along the axis; `eye` and the result in machine coordinates. `radius` of the coil. */
  follow({ grip, hand, y, z }: Hold, table: number, eye: Vector3, radius: number): void {
    // The line of the hold touches the table: the spring is drawn just off it, on the side of the eye.
    const off = (1.3 * radius) / Math.hypot(eye.y - y, eye.z - z);
    this.group.position.set(0, y + off * (eye.y - y), z + off * (eye.z - z));
    this.#stretch(table + grip, hand, radius);
  }

  /** Where the hand is drawn, in machine coordinates. */
  handPlace(into: Vector3): Vector3 {
    return into.copy(this.group.position).setX(this.#knob.position.x);
  }

  #stretch(grip: number, hand: number, radius: number): void {
    const positions = this.#positions;
    const normals = this.#normals;
    const length = hand - grip;
    const wire = 0.2 * radius;
    const slope = length / (TURNS * 2 * Math.PI * radius);
    const norm = Math.hypot(1, slope);
    for (let i = 0; i <= STEPS; i++) {
      const share = i / STEPS;
      const angle = 2 * Math.PI * TURNS * share;
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
      // Narrow at both ends, where it is hooked in.
      const r = radius * Math.min(1, 9 * share, 9 * (1 - share));
      for (let k = 0; k < AROUND; k++) {
        const turn = (2 * Math.PI * k) / AROUND;
        const [outward, across] = [Math.cos(turn), Math.sin(turn)];
        const at = 3 * (i * AROUND + k);
        // Across the wire: outward from the spring's axis, and the direction at right angles to it and to the wire.
        normals[at] = across / norm;
        normals[at + 1] = outward * cos + (across * slope * sin) / norm;
        normals[at + 2] = outward * sin - (across * slope * cos) / norm;
        positions[at] = grip + share * length + wire * elementAt(normals, at);
        positions[at + 1] = r * cos + wire * elementAt(normals, at + 1);
        positions[at + 2] = r * sin + wire * elementAt(normals, at + 2);
      }
    }
    const position = this.#geometry.getAttribute('position') as Float32BufferAttribute;
    const normal = this.#geometry.getAttribute('normal') as Float32BufferAttribute;
    position.copyArray(positions).needsUpdate = true;
    normal.copyArray(normals).needsUpdate = true;
    this.#knob.position.x = hand;
    this.#knob.scale.setScalar(radius);
  }

  dispose(): void {
    this.group.removeFromParent();
    this.#bin.dispose();
  }
}

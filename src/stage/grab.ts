import { Matrix4, type PerspectiveCamera, Ray, Raycaster, Vector2, Vector3 } from 'three';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Machine } from './machine.ts';

/** Forces the keys pull with, N: plain, and with Shift. */
const KEY_FORCE = 20;
const STRONG_KEY_FORCE = 100;

/** On the screen: right and up of each arrow key. */
const ARROWS: Record<string, readonly [right: number, up: number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

interface GrabWorld {
  machine(): Machine | null;
  parameters(): Parameters | null;
  /** Where the table is now, along the axis and in the room, m. */
  tablePosition(): number;
  onHand(position: number | null): void;
  /** Something to see has changed. */
  changed(): void;
}

/** A hand that holds the table: where along the axis it grips and pulls, and the line it pulls on (machine coordinates, m). */
export interface Hold {
  /** From the middle of the table to the grip. */
  grip: number;
  /** Where the grip would be if the table followed at once. */
  hand: number;
  y: number;
  z: number;
}

/** The pointer or the keys take hold of the table and pull it along its axis. */
export class Grab {
  hold: Hold | null = null;
  #heldBy: number | string | null = null;
  readonly #caster = new Raycaster();
  readonly #pointer = new Vector2();
  readonly #ray = new Ray();
  readonly #toMachine = new Matrix4();
  readonly #hit = new Vector3();
  readonly #canvas: HTMLCanvasElement;
  readonly #camera: PerspectiveCamera;
  readonly #world: GrabWorld;

  constructor(canvas: HTMLCanvasElement, camera: PerspectiveCamera, world: GrabWorld) {
    this.#canvas = canvas;
    this.#camera = camera;
    this.#world = world;
    // Before the camera's own listeners, which must not see a pointer that holds the table.
    canvas.addEventListener('pointerdown', this.#down, { capture: true });
    canvas.addEventListener('pointermove', this.#move, { capture: true });
    canvas.addEventListener('pointerup', this.#up, { capture: true });
    canvas.addEventListener('pointercancel', this.#up, { capture: true });
    canvas.addEventListener('lostpointercapture', this.#up, { capture: true });
    canvas.addEventListener('keydown', this.#keyDown);
    canvas.addEventListener('keyup', this.#keyUp);
    canvas.addEventListener('blur', this.letGo);
    window.addEventListener('blur', this.letGo);
  }

  /** Lets go, if anything is held. */
  readonly letGo = (): void => {
    if (!this.hold) return;
    this.hold = null;
    this.#heldBy = null;
    this.#canvas.style.cursor = '';
    this.#world.onHand(null);
    this.#world.changed();
  };

  dispose(): void {
    this.letGo();
    const canvas = this.#canvas;
    canvas.removeEventListener('pointerdown', this.#down, { capture: true });
    canvas.removeEventListener('pointermove', this.#move, { capture: true });
    canvas.removeEventListener('pointerup', this.#up, { capture: true });
    canvas.removeEventListener('pointercancel', this.#up, { capture: true });
    canvas.removeEventListener('lostpointercapture', this.#up, { capture: true });
    canvas.removeEventListener('keydown', this.#keyDown);
    canvas.removeEventListener('keyup', this.#keyUp);
    canvas.removeEventListener('blur', this.letGo);
    window.removeEventListener('blur', this.letGo);
  }

  readonly #down = (event: PointerEvent): void => {
    if (event.button !== 0 || this.hold) return;
    const grip = this.#gripUnder(event);
    if (!grip) return;
    event.stopImmediatePropagation();
    this.#canvas.focus({ preventScroll: true });
    this.#canvas.setPointerCapture(event.pointerId);
    this.#canvas.style.cursor = 'grabbing';
    this.#take(event.pointerId, grip.x, grip.y, grip.z);
    // The grip itself stays under the pointer: the pull starts from zero force.
    this.#pullTo(this.#alongAxis() ?? this.#world.tablePosition() + grip.x);
  };

  readonly #move = (event: PointerEvent): void => {
    if (this.#heldBy === event.pointerId) {
      event.stopImmediatePropagation();
      this.#aim(event);
      const hand = this.#alongAxis();
      if (hand !== null) this.#pullTo(hand);
    } else if (event.buttons === 0) this.#canvas.style.cursor = this.#gripUnder(event) ? 'grab' : '';
  };

  readonly #up = (event: PointerEvent): void => {
    if (this.#heldBy !== event.pointerId) return;
    event.stopImmediatePropagation();
    this.letGo();
  };

  readonly #keyDown = (event: KeyboardEvent): void => {
    const sense = this.#senseOf(event);
    if (sense === 0) return;
    event.preventDefault();
    const machine = this.#world.machine();
    const p = this.#world.parameters();
    if (!machine || !p || event.repeat || (this.hold && this.#heldBy !== event.code)) return;
    const { plate, plateBottom } = machine.plan;
    const grip = (sense * plate.length) / 2;
    this.#take(event.code, grip, plateBottom + plate.height / 2, plate.width / 2);
    const force = event.shiftKey ? STRONG_KEY_FORCE : KEY_FORCE;
    this.#pullTo(this.#world.tablePosition() + grip + (sense * force) / p.handStiffness);
  };

  readonly #keyUp = (event: KeyboardEvent): void => {
    if (this.#heldBy === event.code) this.letGo();
  };

  #take(by: number | string, grip: number, y: number, z: number): void {
    this.#heldBy = by;
    this.hold = { grip, hand: this.#world.tablePosition() + grip, y, z };
  }

  #pullTo(hand: number): void {
    const machine = this.#world.machine();
    if (!this.hold || !machine) return;
    const { from, to } = machine.plan;
    const reach = to - from;
    this.hold.hand = Math.min(Math.max(hand, from - reach), to + reach);
    this.#world.onHand(this.hold.hand - this.hold.grip);
    this.#world.changed();
  }

  /** Which way along the axis an arrow key points as the axis is seen now; 0: neither. */
  #senseOf({ key, ctrlKey, altKey, metaKey }: KeyboardEvent): number {
    const arrow = ARROWS[key];
    const machine = this.#world.machine();
    if (!arrow || !machine || ctrlKey || altKey || metaKey) return 0;
    const { frame, plan } = machine;
    const ends = [plan.from, plan.to].map((x) =>
      frame.localToWorld(new Vector3(x, 0, 0)).project(this.#camera),
    ) as [Vector3, Vector3];
    const right = (ends[1].x - ends[0].x) * this.#camera.aspect;
    const up = ends[1].y - ends[0].y;
    const share = (arrow[0] * right + arrow[1] * up) / (Math.hypot(right, up) || 1);
    return Math.abs(share) > 0.5 ? Math.sign(share) : 0;
  }

  #aim(event: PointerEvent): void {
    const box = this.#canvas.getBoundingClientRect();
    this.#pointer.set(
      ((event.clientX - box.left) / box.width) * 2 - 1,
      1 - ((event.clientY - box.top) / box.height) * 2,
    );
    this.#caster.setFromCamera(this.#pointer, this.#camera);
    const machine = this.#world.machine() as Machine;
    this.#toMachine.copy(machine.frame.matrixWorld).invert();
    this.#ray.copy(this.#caster.ray).applyMatrix4(this.#toMachine);
  }

  /** The point of the table under the pointer, seen from the table's middle; null beside it. */
  #gripUnder(event: PointerEvent): Vector3 | null {
    const machine = this.#world.machine();
    if (!machine) return null;
    this.#aim(event);
    const shift = this.#world.tablePosition();
    this.#ray.origin.x -= shift;
    let nearest: Vector3 | null = null;
    for (const handle of machine.handles)
      if (this.#ray.intersectBox(handle, this.#hit)) {
        const closer =
          !nearest || this.#ray.origin.distanceTo(this.#hit) < this.#ray.origin.distanceTo(nearest);
        if (closer) nearest = this.#hit.clone();
      }
    this.#ray.origin.x += shift;
    return nearest;
  }

  /** The place on the line of the hold that comes nearest to the pointer's ray; null if that line is seen end on. */
  #alongAxis(): number | null {
    const { origin, direction: d } = this.#ray;
    const { y, z } = this.hold as Hold;
    const across = 1 - d.x * d.x;
    if (across < 1e-3) return null;
    const [wy, wz] = [origin.y - y, origin.z - z];
    return origin.x - (d.x * (d.y * wy + d.z * wz)) / across;
  }
}

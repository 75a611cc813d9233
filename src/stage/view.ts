import { Box3, MathUtils, type PerspectiveCamera, Spherical, Vector3 } from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import { isMotionUnwelcome } from '../ui/look/reducedMotion.ts';
import { Flight, type Pose } from './flight.ts';

/** A part of the picture, in the camera's coordinates (−1 to 1). */
interface Place {
  left: number;
  right: number;
  bottom: number;
  top: number;
}

/** From where the camera looks at home, rad, and which part of the picture is filled from there by what is level or steep. */
export interface Outlook {
  readonly azimuth: number;
  readonly elevation: number;
  readonly level: Place;
  readonly steep: Place;
}

/** One machine: the magnifier lies above its near end while it is level, and beside it when it is steep. */
const ONE_MACHINE: Outlook = {
  azimuth: MathUtils.degToRad(-27),
  elevation: MathUtils.degToRad(27),
  level: { left: -0.94, right: 0.94, bottom: -0.88, top: 0.62 },
  steep: { left: -0.45, right: 0.94, bottom: -0.74, top: 0.92 },
};
/** How low and how high the camera may stand, rad. */
const MIN_ELEVATION = 0.02;
const MAX_ELEVATION = Math.PI / 2 - 0.04;
const STEEP_RISE = MathUtils.degToRad(40);
const ZOOM: Readonly<Record<string, number>> = { '+': 0.87, '=': 0.87, '-': 1.15, '−': 1.15 };

/** How home is looked at otherwise: turned and raised, rad, and nearer by a factor. */
export interface Glance {
  readonly turn: number;
  readonly rise: number;
  readonly closer: number;
}

/** How much nearer a camera may be told to be. */
const CLOSER = [0.2, 8] as const;

export const STRAIGHT: Glance = { turn: 0, rise: 0, closer: 1 };

/** The camera: at home it sees the whole travel; the pointer carries it around, wheel and keys bring it closer. */
export class View {
  readonly #controls: OrbitControls;
  #points: readonly Vector3[] = [];
  readonly #middle = new Vector3();
  readonly #eye = new Vector3();
  #azimuth = 0;
  #elevation = 0;
  /** 0 level, 1 steep. */
  #steepness = 0;
  readonly #place: Place = { left: 0, right: 0, bottom: 0, top: 0 };
  #atHome = true;
  #glance: Glance = STRAIGHT;
  /** On its way home; null: where it is to be. */
  #flight: Flight | null = null;
  /** Of the camera from what it looks at, without being nearer. */
  #homeDistance = 1;
  readonly #changed: () => void;
  readonly #outlook: Outlook;

  constructor(
    readonly camera: PerspectiveCamera,
    canvas: HTMLCanvasElement,
    changed: () => void,
    outlook = ONE_MACHINE,
  ) {
    this.#changed = changed;
    this.#outlook = outlook;
    this.#controls = new OrbitControls(camera, canvas);
    this.#controls.dampingFactor = 0.14;
    this.#controls.minPolarAngle = Math.PI / 2 - MAX_ELEVATION;
    this.#controls.maxPolarAngle = Math.PI / 2 - MIN_ELEVATION;
    this.#controls.zoomSpeed = 0.8;
    this.#controls.addEventListener('start', () => {
      this.#atHome = false;
      this.#flight = null;
      // Without damping the camera stops where it is let go.
      this.#controls.enableDamping = !isMotionUnwelcome();
    });
    this.#controls.addEventListener('change', changed);
  }

  /** Once per frame; true while the view still glides. */
  update(): boolean {
    if (this.#flight?.at(performance.now(), this.#pose)) this.#flight = null;
    const isFlying = this.#flight !== null;
    return this.#controls.update() || isFlying;
  }

  /** What has to be seen from home, and how far the axis rises (rad): the table's face is turned to the operator. */
  frame(points: readonly Vector3[], inclination: number, goHome: boolean): void {
    this.#points = points;
    const box = new Box3().setFromPoints([...points]);
    box.getCenter(this.#middle);
    this.#azimuth = this.#outlook.azimuth - MathUtils.degToRad(28) * Math.sin(inclination);
    this.#elevation = this.#outlook.elevation * (1 - 0.45 * Math.abs(Math.sin(inclination)));
    this.#steepness = Math.min(Math.abs(inclination) / STEEP_RISE, 1);
    const size = box.getSize(this.#eye).length();
    this.camera.near = 0.01 * size;
    this.camera.far = 30 * size;
    this.#controls.minDistance = 0.12 * size;
    this.#controls.maxDistance = 6 * size;
    if (goHome || this.#atHome) this.home();
  }

  /** From where the camera looks now, as seen from home. */
  get glance(): Glance {
    if (this.#atHome) return this.#glance;
    const seen = new Spherical().setFromVector3(
      this.#eye.copy(this.camera.position).sub(this.#controls.target),
    );
    const turn = seen.theta - this.#azimuth;
    return {
      turn: Math.atan2(Math.sin(turn), Math.cos(turn)),
      rise: Math.PI / 2 - seen.phi - this.#elevation,
      closer: MathUtils.clamp(this.#homeDistance / seen.radius, ...CLOSER),
    };
  }

  /** Makes another view the one that is home, and goes there; null: that of the whole machine. */
  look(glance: Glance | null): void {
    this.#glance = glance ?? STRAIGHT;
    this.goHome();
  }

  /** As someone would walk there, unless motion is unwelcome. */
  goHome(): void {
    const { position, target } = this.#pose;
    const from = { position: position.clone(), target: target.clone() };
    this.home();
    if (isMotionUnwelcome() || from.position.equals(from.target)) return;
    const to = { position: position.clone(), target: target.clone() };
    this.#flight = new Flight(from, to, performance.now());
    this.update();
  }

  home(): void {
    this.#flight = null;
    if (this.#points.length === 0) return;
    this.#atHome = true;
    const { camera } = this;
    const controls = this.#controls;
    const eye = this.#eye;
    const place = this.#place;
    const { level, steep } = this.#outlook;
    for (const side of ['left', 'right', 'bottom', 'top'] as const)
      place[side] = MathUtils.lerp(level[side], steep[side], this.#steepness);
    const { turn, rise, closer } = this.#glance;
    const elevation = MathUtils.clamp(this.#elevation + rise, MIN_ELEVATION, MAX_ELEVATION);
    eye.setFromSphericalCoords(1, Math.PI / 2 - elevation, this.#azimuth + turn);
    controls.target.copy(this.#middle);
    // Distance and target are refined together: what is nearer looks larger, so neither has a closed form.
    let distance = 2 * Math.max(...this.#points.map((point) => point.distanceTo(this.#middle)));
    const seen = new Vector3();
    const up = new Vector3();
    const right = new Vector3();
    for (let round = 0; round < 24; round++) {
      camera.position.copy(eye).multiplyScalar(distance).add(controls.target);
      camera.lookAt(controls.target);
      camera.updateMatrixWorld();
      camera.updateProjectionMatrix();
      let [left, highest, lowest, rightmost] = [2, -2, 2, -2];
      for (const point of this.#points) {
        seen.copy(point).project(camera);
        left = Math.min(left, seen.x);
        rightmost = Math.max(rightmost, seen.x);
        lowest = Math.min(lowest, seen.y);
        highest = Math.max(highest, seen.y);
      }
      const tan = Math.tan(MathUtils.degToRad(camera.fov / 2));
      up.setFromMatrixColumn(camera.matrixWorld, 1);
      right.setFromMatrixColumn(camera.matrixWorld, 0);
      const shiftY = (highest + lowest) / 2 - (place.top + place.bottom) / 2;
      const shiftX = (left + rightmost) / 2 - (place.left + place.right) / 2;
      controls.target.addScaledVector(up, shiftY * distance * tan);
      controls.target.addScaledVector(right, shiftX * distance * tan * camera.aspect);
      const fill = Math.max(
        (rightmost - left) / (place.right - place.left),
        (highest - lowest) / (place.top - place.bottom),
      );
      distance *= 1 + 0.8 * (fill - 1);
    }
    this.#homeDistance = distance;
    camera.position
      .copy(eye)
      .multiplyScalar(distance / closer)
      .add(controls.target);
    controls.update();
    this.#changed();
  }

  resize(width: number, height: number): void {
    this.camera.aspect = width / height;
    this.camera.updateProjectionMatrix();
    if (this.#atHome) this.home();
    this.#changed();
  }

  /** Closer (below 1) or further away. */
  zoom(factor: number): void {
    this.#atHome = false;
    this.#flight = null;
    const { camera } = this;
    const controls = this.#controls;
    const distance = camera.position.distanceTo(controls.target);
    const wanted = MathUtils.clamp(distance * factor, controls.minDistance, controls.maxDistance);
    camera.position
      .sub(controls.target)
      .multiplyScalar(wanted / distance)
      .add(controls.target);
    this.#changed();
  }

  /** Plus and minus zoom, Home goes home; whether the key was one of these. */
  press({ key, ctrlKey, altKey, metaKey }: KeyboardEvent): boolean {
    if (ctrlKey || altKey || metaKey) return false;
    const factor = ZOOM[key];
    if (factor !== undefined) this.zoom(factor);
    else if (key === 'Home') this.goHome();
    else return false;
    return true;
  }

  /** Lives: what is written into it moves the camera. */
  get #pose(): Pose {
    return { position: this.camera.position, target: this.#controls.target };
  }

  dispose(): void {
    this.#controls.dispose();
  }
}

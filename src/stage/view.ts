import { Box3, MathUtils, type PerspectiveCamera, Vector3 } from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';

/**
 * The machine fills this part of the picture, in the camera's coordinates (−1 to 1): the magnifier lies above the near end of
 * a level machine, and beside a steep one.
 */
const LEVEL = { left: -0.94, right: 0.94, bottom: -0.88, top: 0.62 };
const STEEP = { left: -0.45, right: 0.94, bottom: -0.74, top: 0.92 };
const STEEP_RISE = MathUtils.degToRad(40);
const HOME_AZIMUTH = MathUtils.degToRad(-27);
const HOME_ELEVATION = MathUtils.degToRad(27);

/** The camera: at home it sees the whole travel; the pointer carries it around, wheel and keys bring it closer. */
export class View {
  private readonly controls: OrbitControls;
  private points: readonly Vector3[] = [];
  private readonly middle = new Vector3();
  private readonly eye = new Vector3();
  private azimuth = HOME_AZIMUTH;
  private elevation = HOME_ELEVATION;
  private readonly place = { ...LEVEL };
  private atHome = true;

  constructor(
    readonly camera: PerspectiveCamera,
    canvas: HTMLCanvasElement,
    private readonly changed: () => void,
  ) {
    this.controls = new OrbitControls(camera, canvas);
    this.controls.enableDamping = true;
    this.controls.dampingFactor = 0.14;
    this.controls.minPolarAngle = 0.04;
    this.controls.maxPolarAngle = Math.PI / 2 - 0.02;
    this.controls.zoomSpeed = 0.8;
    this.controls.addEventListener('start', () => {
      this.atHome = false;
    });
    this.controls.addEventListener('change', changed);
  }

  /** Once per frame; true while the view still glides. */
  update(): boolean {
    return this.controls.update();
  }

  /** What has to be seen from home, and how far the axis rises (rad): the table's face is turned to the operator. */
  frame(points: readonly Vector3[], inclination: number, goHome: boolean): void {
    this.points = points;
    const box = new Box3().setFromPoints([...points]);
    box.getCenter(this.middle);
    this.azimuth = HOME_AZIMUTH - MathUtils.degToRad(28) * Math.sin(inclination);
    this.elevation = HOME_ELEVATION * (1 - 0.45 * Math.abs(Math.sin(inclination)));
    const steep = Math.min(Math.abs(inclination) / STEEP_RISE, 1);
    for (const side of ['left', 'right', 'bottom', 'top'] as const)
      this.place[side] = MathUtils.lerp(LEVEL[side], STEEP[side], steep);
    const size = box.getSize(this.eye).length();
    this.camera.near = 0.01 * size;
    this.camera.far = 30 * size;
    this.controls.minDistance = 0.12 * size;
    this.controls.maxDistance = 6 * size;
    if (goHome || this.atHome) this.home();
  }

  home(): void {
    if (this.points.length === 0) return;
    this.atHome = true;
    const { camera, controls, eye, place } = this;
    eye.setFromSphericalCoords(1, Math.PI / 2 - this.elevation, this.azimuth);
    controls.target.copy(this.middle);
    // Distance and target are refined together: what is nearer looks larger, so neither has a closed form.
    let distance = 2 * Math.max(...this.points.map((point) => point.distanceTo(this.middle)));
    const seen = new Vector3();
    const up = new Vector3();
    const right = new Vector3();
    for (let round = 0; round < 24; round++) {
      camera.position.copy(eye).multiplyScalar(distance).add(controls.target);
      camera.lookAt(controls.target);
      camera.updateMatrixWorld();
      camera.updateProjectionMatrix();
      let [left, highest, lowest, rightmost] = [2, -2, 2, -2];
      for (const point of this.points) {
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
    camera.position.copy(eye).multiplyScalar(distance).add(controls.target);
    controls.update();
    this.changed();
  }

  resize(width: number, height: number): void {
    this.camera.aspect = width / height;
    this.camera.updateProjectionMatrix();
    if (this.atHome) this.home();
    this.changed();
  }

  /** Closer (below 1) or further away. */
  zoom(factor: number): void {
    this.atHome = false;
    const { camera, controls } = this;
    const distance = camera.position.distanceTo(controls.target);
    const wanted = MathUtils.clamp(distance * factor, controls.minDistance, controls.maxDistance);
    camera.position
      .sub(controls.target)
      .multiplyScalar(wanted / distance)
      .add(controls.target);
    this.changed();
  }

  dispose(): void {
    this.controls.dispose();
  }
}

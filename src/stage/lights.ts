import {
  BackSide,
  BoxGeometry,
  BufferAttribute,
  Color,
  DirectionalLight,
  HemisphereLight,
  Mesh,
  MeshBasicMaterial,
  PMREMGenerator,
  Scene,
  type Sphere,
  SphereGeometry,
  type Texture,
  type WebGLRenderer,
} from 'three';
import { at } from '../../shared/core/at.ts';
import { Bin } from './build/bin.ts';

export type Theme = 'light' | 'dark';

interface Mood {
  /** Brightness of the room from straight below through the horizon to straight above, evenly in elevation. */
  readonly room: readonly number[];
  /** Share of the soft boxes' brightness. */
  readonly boxes: number;
  readonly key: number;
  readonly fill: number;
}

const MOODS: Record<Theme, Mood> = {
  light: { room: [0.26, 0.44, 0.74, 0.42, 0.55, 0.75], boxes: 1.1, key: 2.6, fill: 1.5 },
  dark: { room: [0.12, 0.26, 0.5, 0.17, 0.25, 0.38], boxes: 1, key: 2.1, fill: 0.8 },
};

/** Soft boxes of the studio: size and place in metres, brightness. */
const BOXES: readonly [
  size: readonly [number, number, number],
  at: readonly [number, number, number],
  brightness: number,
][] = [
  [[4.6, 0.1, 1.6], [-0.6, 4.4, 0.4], 5],
  [[0.1, 1.5, 2.6], [-4.6, 1.9, 1.4], 4],
  [[0.1, 2.4, 0.7], [4.4, 1.4, -1.9], 4],
  [[5.5, 1.1, 0.1], [0.6, 2.7, -4.2], 1.15],
  [[3.2, 0.8, 0.1], [0.6, -1.6, 4.4], 0.75],
];

/** A studio: soft boxes that metal can mirror, and one key light that throws the shadow. */
export class Studio {
  readonly key = new DirectionalLight('#fff6ea', 2);
  readonly #fill = new HemisphereLight('#e8eef5', '#8d8880', 1);
  #environment: Texture | null = null;
  #theme: Theme | null = null;
  readonly #scene: Scene;
  readonly #renderer: WebGLRenderer;

  constructor(scene: Scene, renderer: WebGLRenderer) {
    this.#scene = scene;
    this.#renderer = renderer;
    this.key.castShadow = true;
    this.key.shadow.mapSize.set(2048, 2048);
    this.key.shadow.radius = 4;
    this.key.shadow.intensity = 0.85;
    scene.add(this.key, this.key.target, this.#fill);
  }

  setTheme(theme: Theme): void {
    if (theme === this.#theme) return;
    this.#theme = theme;
    const mood = MOODS[theme];
    this.key.intensity = mood.key;
    this.#fill.intensity = mood.fill;
    this.clearOut();
  }

  /**
   * Before a frame: what metal mirrors. Made only once there is something to draw, since it takes a machine
   * without a graphics card seconds.
   */
  furnish(): void {
    if (this.#environment || !this.#theme) return;
    this.#environment = surroundings(this.#renderer, MOODS[this.#theme]);
    this.#scene.environment = this.#environment;
  }

  /** What metal mirrors was drawn by the graphics card, and went with it. */
  clearOut(): void {
    this.#environment?.dispose();
    this.#environment = null;
  }

  /** The shadow covers this sphere and nothing else, so that it is as fine as it can be. */
  aim({ center, radius }: Sphere): void {
    const { key } = this;
    key.target.position.copy(center);
    key.position
      .set(-0.55, 1.25, 0.62)
      .normalize()
      .multiplyScalar(3 * radius)
      .add(center);
    const camera = key.shadow.camera;
    camera.left = camera.bottom = -radius;
    camera.right = camera.top = radius;
    camera.near = radius;
    camera.far = 5 * radius;
    camera.updateProjectionMatrix();
    key.shadow.normalBias = radius * 0.003;
    key.shadow.bias = -0.0002;
    key.shadow.needsUpdate = true;
    key.target.updateMatrixWorld();
  }

  dispose(): void {
    this.#environment?.dispose();
    this.key.dispose();
  }
}

function surroundings(renderer: WebGLRenderer, mood: Mood): Texture {
  const bin = new Bin();
  const room = new Scene();
  const add = (
    size: readonly [number, number, number],
    at: readonly [number, number, number],
    material: MeshBasicMaterial,
  ) => {
    const mesh = new Mesh(bin.own(new BoxGeometry(...size)), bin.own(material));
    mesh.position.set(...at);
    room.add(mesh);
  };
  const shell = bin.own(new SphereGeometry(6, 32, 40));
  shadeByElevation(shell, mood.room);
  room.add(new Mesh(shell, bin.own(new MeshBasicMaterial({ vertexColors: true, side: BackSide }))));
  for (const [size, at, brightness] of BOXES)
    add(size, at, new MeshBasicMaterial({ color: new Color().setScalar(mood.boxes * brightness) }));
  const generator = new PMREMGenerator(renderer);
  const { texture } = generator.fromScene(room, 0.015);
  generator.dispose();
  bin.dispose();
  return texture;
}

function shadeByElevation(sphere: SphereGeometry, stops: readonly number[]): void {
  const position = sphere.getAttribute('position');
  const colours = new Float32Array(3 * position.count);
  for (let i = 0; i < position.count; i++) {
    const height = (0.5 + Math.asin(position.getY(i) / 6) / Math.PI) * (stops.length - 1);
    const stop = Math.min(Math.floor(height), stops.length - 2);
    const [from, to] = [at(stops, stop), at(stops, stop + 1)];
    colours.fill(from + (height - stop) * (to - from), 3 * i, 3 * i + 3);
  }
  sphere.setAttribute('color', new BufferAttribute(colours, 3));
}

import { NeutralToneMapping, PCFShadowMap, PerspectiveCamera, Scene, Sphere, WebGLRenderer } from 'three';
import { RestTimer } from '../ui/timing/restTimer.ts';
import { Bin } from './build/bin.ts';
import { FloorShadow, type Standing } from './floorShadow.ts';
import { Studio, type Theme } from './lights.ts';
import { QualityGovernor } from './quality.ts';
import { drawsInSoftware } from './software.ts';

/** Sharper than this nobody sees at arm's length. */
const MAX_PIXELS = 2;
/** After this long without movement the picture is drawn once more at its best, ms. */
const STILL = 900;
/** Without smoothed edges, what stands still is drawn finer than the screen instead. */
const FINER = 1.5;

export const PICTURE_LOST =
  'The graphics card has stopped drawing. The simulation goes on, and the picture comes back with the card.';

export const NO_PICTURE = 'This browser cannot show the 3D picture: it lacks WebGL 2. Everything else works.';

/** Null where there is no WebGL 2. */
export function pictureOn(canvas: HTMLCanvasElement): Picture | null {
  try {
    return new Picture(canvas);
  } catch {
    return null;
  }
}

/** Canvas, renderer, light and floor; draws a frame as finely as the display can keep up with. */
export class Picture {
  readonly camera = new PerspectiveCamera(24, 1, 0.01, 100);
  readonly scene = new Scene();
  readonly #renderer: WebGLRenderer;
  readonly #bin = new Bin();
  readonly #studio: Studio;
  readonly #shadow: FloorShadow;
  readonly #software = drawsInSoftware();
  readonly #governor = new QualityGovernor(this.#software ? 2 : 0);
  #lastRefresh = performance.now();
  #refreshes = 0;
  #frames = 0;
  #resolution = 0;
  #seldom = false;
  readonly #still = new RestTimer(STILL, () => this.renderStill());

  /** Throws where there is no WebGL 2. */
  constructor(canvas: HTMLCanvasElement) {
    this.#renderer = this.#bin.own(
      new WebGLRenderer({
        canvas,
        alpha: true,
        antialias: !this.#software,
        powerPreference: 'high-performance',
      }),
    );
    this.#renderer.toneMapping = NeutralToneMapping;
    this.#renderer.shadowMap.enabled = true;
    this.#renderer.shadowMap.type = PCFShadowMap;
    this.#renderer.shadowMap.autoUpdate = false;
    this.#studio = this.#bin.own(new Studio(this.scene, this.#renderer));
    this.#shadow = new FloorShadow(this.#bin);
    this.scene.add(this.#shadow.group);
  }

  setTheme(theme: Theme): void {
    this.#studio.setTheme(theme);
    this.#shadow.darkness = theme === 'light' ? 0.5 : 0.85;
  }

  /** Light and floor for these machines. */
  place(machines: readonly Standing[]): void {
    this.#studio.aim(new Sphere().setFromPoints(machines.flatMap(({ extent }) => extent)));
    this.#shadow.place(machines);
  }

  /** After the graphics card was lost and came back: what it had drawn for itself is drawn anew. */
  restore(): void {
    this.#studio.clearOut();
  }

  resize(width: number, height: number): void {
    this.#renderer.setSize(width, height, false);
    this.#resolution = 0;
  }

  /** Whether it is computed without a graphics card, or the display does not keep up with it. */
  get isCostly(): boolean {
    return this.#software || this.#governor.level > 0;
  }

  /** Whether it is asked for with few of the refreshes, by choice: then that says nothing of the display. */
  setSeldom(seldom: boolean): void {
    this.#seldom = seldom;
  }

  /** With each refresh of an ongoing movement: whether this one is to be drawn. */
  takesTurn(): boolean {
    const time = performance.now();
    if (!this.#seldom) this.#governor.refresh((time - this.#lastRefresh) / 1000);
    this.#lastRefresh = time;
    // What moves is not still, however long ago its last picture is.
    if (this.#still.isDue) this.#still.touch();
    return this.#refreshes++ % this.#governor.quality.every === 0;
  }

  /** One frame of an ongoing movement. */
  render(): void {
    const { resolution, shadowEvery } = this.#governor.quality;
    this.#draw(resolution, this.#frames++ % shadowEvery === 0);
    if (this.#governor.level > 0) this.#still.touch();
    else this.#still.cancel();
  }

  /** The present view at its best: for what stands still, and for pictures to keep. */
  renderStill(): void {
    this.#draw(this.#software ? FINER : 1, true);
  }

  dispose(): void {
    this.#still.cancel();
    this.#bin.dispose();
  }

  #draw(share: number, shadow: boolean): void {
    const resolution = share * Math.min(devicePixelRatio, MAX_PIXELS);
    if (resolution !== this.#resolution) {
      this.#resolution = resolution;
      this.#renderer.setPixelRatio(resolution);
    }
    this.#renderer.shadowMap.needsUpdate = shadow;
    this.#studio.furnish();
    this.#renderer.render(this.scene, this.camera);
  }
}

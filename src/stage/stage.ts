import { valueAt } from '../../shared/core/at.ts';
import './stage.css';
import { Color, Vector3 } from 'three';
import { CHANNEL_INDEX as C, CHANNEL_COUNT } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { SweptChips } from '../../shared/core/sweptChips.ts';
import type { History } from '../history/history.ts';
import { cssColour } from '../ui/look/colours.ts';
import { Bin } from './build/bin.ts';
import { createMaterials, type Materials } from './build/materials.ts';
import { ChipPile } from './chipPile.ts';
import { CutawayPaint } from './cutaway.ts';
import type { Cutaway } from './cutawayMode.ts';
import { Grab } from './grab.ts';
import { HandSpring } from './handSpring.ts';
import type { Theme } from './lights.ts';
import { Machine, shapeOf } from './machine.ts';
import { Overlay, type ScreenPoint } from './overlay.ts';
import { colourHands } from './parts/rule.ts';
import type { RunState } from './parts/tower.ts';
import { NO_PICTURE, PICTURE_LOST, type Picture, pictureOn } from './picture.ts';
import { Posed } from './posed.ts';
import { fitRule } from './ruleLetters.ts';
import { type PictureSize, pixelsPerMetreAt, placeOnScreen } from './screenPlace.ts';
import { type Glance, STRAIGHT, View } from './view.ts';

interface StageOptions {
  /** Where along the axis the hand pulls the table to, m; null when it lets go. */
  onHand(position: number | null): void;
}

interface Stage {
  /** Builds this scene's machine in place of the present one; the camera goes home. */
  show(scene: Scene): void;
  /**
   * Once per display refresh: the newest value of each channel, in the order of CHANNELS, and the parameters, from which the machine is
   * rebuilt if its shape depends on what has changed. `chips`: null where none lie on magnets. `writes`: whether the numbers are written with this refresh.
   * Returns whether the picture was drawn.
   */
  draw(
    now: Float64Array,
    history: History,
    p: Parameters,
    chips: SweptChips | null,
    writes: boolean,
  ): boolean;
  setCutaway(mode: Cutaway): void;
  setTheme(theme: Theme): void;
  setState(state: RunState): void;
  resetView(): void;
  /** Makes another view the one that is home; null: that of the whole machine. */
  look(glance: Glance | null): void;
  /** From where it is seen now. */
  readonly glance: Glance;
  /** An arrow over the table, or none. */
  pointAtTable(on: boolean): void;
  /** The picture is to be drawn with the next refresh, whether or not anything has changed. */
  redraw(): void;
  /** What drawing costs here; null where there is no picture. */
  readonly pace: Pick<Picture, 'isCostly' | 'setSeldom'> | null;
  /** Draws the present view at its best, to be copied at once. */
  drawStill(): void;
  dispose(): void;
}

const LABEL =
  'The machine. Drag the table, or hold an arrow key along its axis, to pull it by hand; Shift pulls harder. ' +
  'Drag beside it to look around, plus and minus zoom, Home resets the view.';

/** While a parameter is dragged, a new machine at most this often, ms. */
const REBUILD = 150;

export function createStage(host: HTMLElement, options: StageOptions): Stage {
  return new MachineStage(host, options);
}

class MachineStage implements Stage {
  readonly #root = document.createElement('div');
  readonly #canvas = document.createElement('canvas');
  readonly #overlay = new Overlay();
  readonly #bin = new Bin();
  readonly #picture: Picture | null;
  readonly #materials: Materials;
  readonly #paint: CutawayPaint;
  readonly #view: View | null = null;
  readonly #grab: Grab | null = null;
  readonly #spring = this.#bin.own(new HandSpring());
  readonly #chips: ChipPile;
  readonly #watcher = new ResizeObserver(() => this.#resize());

  #machine: Machine | null = null;
  #scene: Scene | null = null;
  #parameters: Parameters | null = null;
  #shape = '';
  #built = 0;
  readonly #now = new Float64Array(CHANNEL_COUNT);
  readonly #posed = new Posed();
  #state: RunState = 'paused';
  #dirty = true;
  #waiting = 0;
  #lastDraw = performance.now();
  /** Kept, because asking the page for it while it draws makes it lay itself out; 0 while the stage is not seen. */
  readonly #size: PictureSize = { width: 0, height: 0 };
  readonly #corner = new Vector3();
  readonly #hand: ScreenPoint = { x: 0, y: 0 };
  readonly #top: ScreenPoint = { x: 0, y: 0 };
  /** Both ends of the table's edge that the magnifier shows. */
  readonly #edges: readonly ScreenPoint[] = [0, 1].map(() => ({ x: 0, y: 0 }));
  readonly #options: StageOptions;

  constructor(host: HTMLElement, options: StageOptions) {
    this.#options = options;
    this.#root.className = 'stage';
    this.#canvas.tabIndex = 0;
    this.#canvas.setAttribute('role', 'application');
    this.#canvas.setAttribute('aria-label', LABEL);
    this.#root.append(this.#canvas, this.#overlay.element);
    host.append(this.#root);
    this.#materials = createMaterials(this.#bin);
    this.#chips = this.#bin.own(new ChipPile(this.#materials.chip));
    this.#paint = new CutawayPaint(this.#bin, this.#overlay.legend);
    this.#picture = pictureOn(this.#canvas);
    if (this.#picture) {
      const { camera, scene } = this.#picture;
      this.#bin.own(this.#picture);
      this.#grab = this.#bin.own(
        new Grab(this.#canvas, camera, {
          machine: () => this.#machine,
          parameters: () => this.#parameters,
          tablePosition: () => this.#tablePlace(),
          onHand: (position) => this.#options.onHand(position),
          changed: this.#invalidate,
        }),
      );
      this.#view = this.#bin.own(new View(camera, this.#canvas, this.#invalidate));
      scene.add(this.#spring.group);
      this.#canvas.addEventListener('keydown', this.#keyDown);
      this.#canvas.addEventListener('webglcontextlost', () => this.#overlay.setNote(PICTURE_LOST, true));
      this.#canvas.addEventListener('webglcontextrestored', () => this.#restore());
    }
    this.#watcher.observe(this.#root);
    this.setState('paused');
    this.setTheme(document.documentElement.getAttribute('data-theme') === 'dark' ? 'dark' : 'light');
  }

  show(scene: Scene): void {
    this.#grab?.letGo();
    this.#scene = scene;
    this.#parameters = scene.parameters;
    this.#now.fill(0);
    this.#build(true);
  }

  draw(
    now: Float64Array,
    history: History,
    p: Parameters,
    chips: SweptChips | null,
    writes: boolean,
  ): boolean {
    // A hand that lets go of a table at rest changes nothing but the label of its force.
    if (valueAt(now, C.handForce) !== valueAt(this.#now, C.handForce)) this.#dirty = true;
    this.#now.set(now);
    this.#parameters = p;
    const time = performance.now();
    const elapsed = Math.min((time - this.#lastDraw) / 1000, 0.25);
    this.#lastDraw = time;
    if (!this.#scene) return false;
    this.#rebuildIfNeeded();
    const machine = this.#machine;
    if (machine && this.#paint.update(machine, now, p, elapsed)) this.#dirty = true;
    if (this.#posed.differsFrom(now)) this.#dirty = true;
    if (this.#grab?.hold) this.#dirty = true;
    if (machine && this.#chips.place(machine.plan, p, chips, now)) this.#dirty = true;
    this.#overlay.setChips(this.#chips.text);
    const gliding = this.#view?.update() ?? false;
    cancelAnimationFrame(this.#waiting);
    this.#waiting = 0;
    const drawn = (this.#dirty || gliding) && this.#refresh();
    this.#overlay.magnifier.take(now, history);
    if (this.#size.width > 0) this.#overlay.magnifier.draw(now, p, elapsed, this.#pixelsPerMetre(), writes);
    return drawn;
  }

  setCutaway(mode: Cutaway): void {
    this.#paint.setMode(mode, this.#machine);
    this.#invalidate();
  }

  setTheme(theme: Theme): void {
    this.#picture?.setTheme(theme);
    this.#materials.phantom.color.set(theme === 'light' ? '#1b2023' : '#dfe5ea');
    this.#colour();
    this.#overlay.magnifier.restyle();
    this.#invalidate();
  }

  setState(state: RunState): void {
    this.#state = state;
    this.#root.setAttribute('data-state', state);
    this.#overlay.setState(state);
    this.#machine?.tower.show(state);
    this.#invalidate();
  }

  resetView(): void {
    this.#view?.goHome();
  }

  get glance(): Glance {
    return this.#view?.glance ?? STRAIGHT;
  }

  look(glance: Glance | null): void {
    this.#view?.look(glance);
  }

  pointAtTable(on: boolean): void {
    this.#overlay.pointsAtTable = on;
    this.#invalidate();
  }

  redraw(): void {
    this.#dirty = true;
  }

  get pace(): Picture | null {
    return this.#picture;
  }

  drawStill(): void {
    this.#rebuildIfNeeded(true);
    this.#frame();
    this.#picture?.renderStill();
  }

  dispose(): void {
    cancelAnimationFrame(this.#waiting);
    this.#watcher.disconnect();
    this.#machine?.dispose();
    this.#bin.dispose();
    this.#root.remove();
  }

  /** After the graphics card has come back. */
  #restore(): void {
    this.#picture?.restore();
    this.#overlay.setNote('', true);
    this.#invalidate();
  }

  /** Draws with the next refresh, whether or not new values arrive by then. */
  readonly #invalidate = (): void => {
    this.#dirty = true;
    if (this.#waiting) return;
    this.#waiting = requestAnimationFrame(() => {
      this.#waiting = 0;
      if (!this.#dirty) return;
      this.#rebuildIfNeeded();
      this.#view?.update();
      this.#refresh();
      if (this.#dirty) this.#invalidate();
    });
  };

  #rebuildIfNeeded(atOnce = false): void {
    if (!this.#scene || !this.#parameters || shapeOf(this.#scene.driveType, this.#parameters) === this.#shape)
      return;
    if (atOnce || performance.now() - this.#built > REBUILD) this.#build(false);
    else this.#invalidate();
  }

  #build(goHome: boolean): void {
    if (!this.#scene || !this.#parameters) return;
    if (!this.#picture) {
      this.#overlay.setNote(NO_PICTURE, true);
      return;
    }
    const p = this.#parameters;
    this.#built = performance.now();
    const tilt = this.#machine?.frame.rotation.z;
    this.#machine?.dispose();
    const machine = new Machine(this.#scene.driveType, p, this.#materials);
    this.#machine = machine;
    this.#shape = shapeOf(this.#scene.driveType, p);
    this.#picture.scene.add(machine.root);
    this.#picture.place([machine]);
    machine.frame.add(this.#spring.group, this.#chips.group);
    machine.tower.show(this.#state);
    this.#paint.dress(machine);
    this.#view?.frame(machine.extent, p.inclination, goHome || tilt !== p.inclination);
    this.#fitRule();
    this.#posed.forget();
    this.#overlay.setNote('', true);
    this.#colour();
    this.#invalidate();
  }

  /** Colours of quantities on the machine, as the theme has them now. */
  #colour(): void {
    this.#spring.setColour(new Color(cssColour('--q-force')));
    if (this.#machine) colourHands(this.#machine.rule);
  }

  /** Draws, unless the display is so slow that this refresh belongs to the rest of the page. */
  #refresh(): boolean {
    this.#dirty = true;
    const takesTurn = this.#picture?.takesTurn() ?? true;
    if (takesTurn) this.#frame();
    return takesTurn;
  }

  #frame(): void {
    this.#dirty = false;
    const [machine, picture] = [this.#machine, this.#picture];
    if (!picture || this.#size.width === 0 || this.#canvas.clientWidth === 0) return;
    if (machine) {
      machine.pose(this.#now);
      this.#posed.take(this.#now);
      this.#stretchSpring(machine);
    }
    picture.render();
    if (machine) {
      const { plate, plateBottom } = machine.plan;
      const table = valueAt(this.#now, C.tablePosition);
      this.#edges.forEach((point, i) => {
        const z = i === 0 ? plate.width / 2 : -plate.width / 2;
        this.#corner.set(table - plate.length / 2, plateBottom + plate.height, z);
        this.#onScreen(machine, this.#corner, point);
      });
      this.#overlay.lead(this.#edges);
      this.#onScreen(machine, this.#corner.set(table, plateBottom + plate.height, 0), this.#top);
      this.#overlay.pointAt(this.#top);
    }
  }

  #stretchSpring(machine: Machine): void {
    const hold = this.#grab?.hold ?? null;
    this.#spring.group.visible = hold !== null;
    if (!hold) {
      this.#showRepeatedHand();
      return;
    }
    const eye = machine.frame.worldToLocal(this.#corner.copy((this.#picture as Picture).camera.position));
    this.#spring.follow(hold, this.#tablePlace(), eye, 0.42 * machine.plan.rail.width);
    this.#onScreen(machine, this.#spring.handPlace(this.#corner), this.#hand);
    this.#overlay.showHand(valueAt(this.#now, C.handForce), this.#hand);
  }

  /** A hand of a run that is repeated pulls without holding anything on the page. */
  #showRepeatedHand(): void {
    const force = valueAt(this.#now, C.handForce);
    this.#overlay.showHand(force === 0 ? null : force, this.#top);
  }

  /** Where the table is in the room, along the axis: the base moves too. */
  #tablePlace(): number {
    return valueAt(this.#now, C.tablePosition) + valueAt(this.#now, C.basePosition);
  }

  /** Where a point of the machine appears, CSS pixels. */
  #onScreen(machine: Machine, at: Vector3, into: ScreenPoint): void {
    placeOnScreen(machine, (this.#picture as Picture).camera, at, this.#size, into);
  }

  /** Of the picture, where the table is: how far the magnifier enlarges follows from it. */
  #pixelsPerMetre(): number {
    const [machine, picture] = [this.#machine, this.#picture];
    if (!machine || !picture) return Number.NaN;
    const at = this.#corner.set(valueAt(this.#now, C.tablePosition), machine.plan.plateBottom, 0);
    return pixelsPerMetreAt(machine, picture.camera, at, this.#size);
  }

  /** Its letters as high as the page's own. */
  #fitRule(): void {
    if (!this.#machine || !this.#picture || this.#size.height === 0) return;
    const text = Number.parseFloat(getComputedStyle(this.#root).fontSize);
    fitRule(this.#machine, this.#picture.camera, this.#size, text);
  }

  #resize(): void {
    const { clientWidth: width, clientHeight: height } = this.#root;
    Object.assign(this.#size, { width, height });
    if (width === 0 || height === 0) return;
    this.#picture?.resize(width, height);
    this.#view?.resize(width, height);
    this.#fitRule();
    this.#overlay.magnifier.restyle();
    // At once: a canvas of a new size is empty until it is drawn on.
    this.#frame();
  }

  readonly #keyDown = (event: KeyboardEvent): void => {
    if (this.#view?.press(event)) event.preventDefault();
  };
}

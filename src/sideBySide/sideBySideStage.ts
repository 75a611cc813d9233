import '../stage/stage.css';
import { type Camera, MathUtils, Vector3 } from 'three';
import { at } from '../../shared/core/at.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { unitSystem } from '../../shared/core/unitSystem.ts';
import { Bin } from '../stage/build/bin.ts';
import { createMaterials } from '../stage/build/materials.ts';
import type { Standing } from '../stage/floorShadow.ts';
import type { Theme } from '../stage/lights.ts';
import { Machine, shapeOf } from '../stage/machine.ts';
import { colourHands } from '../stage/parts/rule.ts';
import type { RunState } from '../stage/parts/tower.ts';
import { NO_PICTURE, PICTURE_LOST, pictureOn } from '../stage/picture.ts';
import { Posed } from '../stage/posed.ts';
import { stillOf } from '../stage/still.ts';
import { type Outlook, View } from '../stage/view.ts';
import { element } from '../ui/dom.ts';
import { CandidateLabel } from './candidateLabel.ts';
import { placesAcross } from './placesAcross.ts';

/** What stands in a candidate. */
interface StageCandidate {
  readonly letter: string;
  readonly title: string;
  readonly scene: Scene;
}

interface Stand extends Standing {
  readonly machine: Machine;
  readonly posed: Posed;
  readonly label: CandidateLabel;
  /** The end of the granite from which a line leads to the label, in the coordinates of the world. */
  readonly end: Vector3;
  state: RunState;
}

const LABEL =
  'The machines of all candidates, side by side at one scale. Drag to look around, plus and minus zoom in and ' +
  'away, Home resets the view.';

/** Steeper and more from the front than one machine is seen, so that none hides another. */
const AZIMUTH = MathUtils.degToRad(-10);
const ELEVATION = MathUtils.degToRad(37);
const EDGE = 0.95;
/** Between a machine and the line to its label, CSS pixels. */
const GAP = 6;

/** Up to four machines on one floor: side by side, at their true sizes, all travelling the same way. */
export class CandidatesStage {
  readonly element = element('div', { class: 'stage' });
  readonly #canvas = element('canvas', { tabindex: 0, role: 'application', 'aria-label': LABEL });
  readonly #note = element('p', { class: 'stage-note' });
  readonly #materials = createMaterials(new Bin());
  readonly #picture = pictureOn(this.#canvas);
  readonly #outlook: Outlook = {
    azimuth: AZIMUTH,
    elevation: ELEVATION,
    level: { left: -EDGE, right: EDGE, bottom: -EDGE, top: EDGE },
    steep: { left: -EDGE, right: EDGE, bottom: -EDGE, top: EDGE },
  };
  readonly #view: View | null = null;
  readonly #at = new Vector3();
  #stands: readonly Stand[] = [];
  #shape = '';
  /** CSS pixels, of when it was last in sight. */
  #width = 0;
  #dirty = true;

  constructor() {
    this.element.append(this.#canvas, this.#note);
    this.#say(this.#picture ? '' : NO_PICTURE);
    if (this.#picture) {
      const view = new View(this.#picture.camera, this.#canvas, this.#invalidate, this.#outlook);
      this.#view = view;
      this.#canvas.addEventListener('keydown', (event) => {
        if (view.press(event)) event.preventDefault();
      });
      this.#canvas.addEventListener('webglcontextlost', () => this.#say(PICTURE_LOST));
      this.#canvas.addEventListener('webglcontextrestored', () => {
        this.#picture?.restore();
        this.#say('');
        this.#invalidate();
      });
    }
    new ResizeObserver(() => this.#resize()).observe(this.element);
  }

  /** A sentence where the machines would be. */
  #say(text: string): void {
    this.#note.textContent = text;
    this.#note.hidden = text === '';
  }

  /** Machines are built anew if one of them looks different, or if another one stands in a candidate. */
  show(candidates: readonly StageCandidate[]): void {
    const shapes = candidates.map(({ scene }) => shapeOf(scene.driveType, scene.parameters));
    // The rules are graduated in the units that are read.
    const shape = [unitSystem(), ...shapes].join('\n');
    if (shape !== this.#shape) this.#build(candidates);
    this.#shape = shape;
    candidates.forEach(({ letter, title }, i) => {
      this.#stands[i]?.label.show(letter, title);
    });
    this.#makeRoom();
  }

  setState(index: number, state: RunState): void {
    const stand = this.#stands[index];
    if (!stand || stand.state === state) return;
    stand.state = state;
    stand.machine.tower.show(state);
    this.#invalidate();
  }

  setTheme(theme: Theme): void {
    this.#picture?.setTheme(theme);
    for (const { machine } of this.#stands) colourHands(machine.rule);
    this.#invalidate();
  }

  /** Once per display refresh: the values of each channel, candidate by candidate. True when a picture was drawn. */
  draw(values: readonly Float64Array[]): boolean {
    const moved = this.#move(values);
    const gliding = this.#view?.update() ?? false;
    if (moved || gliding) this.#dirty = true;
    if (!this.#dirty || !this.#picture?.takesTurn()) return false;
    this.#frame();
    return true;
  }

  /** Draws with the next refresh, whether anything has moved or not. */
  redraw(): void {
    this.#invalidate();
  }

  resetView(): void {
    this.#view?.goHome();
  }

  /** The stage as it is seen now, with the letters and titles of the candidates, as a PNG data URL. */
  picture(): string {
    this.#frame();
    this.#picture?.renderStill();
    const { canvas, pen, scale } = stillOf(this.#canvas, this.#width);
    for (const { label } of this.#stands) label.copyTo(pen, scale);
    return canvas.toDataURL('image/png');
  }

  readonly #invalidate = (): void => {
    this.#dirty = true;
  };

  #build(candidates: readonly StageCandidate[]): void {
    for (const { machine, label } of this.#stands) {
      machine.dispose();
      label.element.remove();
    }
    this.#stands = [];
    if (!this.#picture) return;
    const machines = candidates.map(
      ({ scene }) => new Machine(scene.driveType, scene.parameters, this.#materials),
    );
    const places = placesAcross(machines.map(({ plan }) => plan.base));
    this.#stands = machines.map((machine, i) => this.#stand(machine, at(places, i)));
    this.#picture.place(this.#stands);
    this.#invalidate();
    if (!candidates[0]) return;
    const points = this.#stands.flatMap(({ extent }) => extent);
    this.#view?.frame(points, candidates[0].scene.parameters.inclination, true);
  }

  #stand(machine: Machine, z: number): Stand {
    const { root, frame, plan, floor } = machine;
    root.position.set(0, -floor, z);
    root.updateMatrixWorld(true);
    this.#picture?.scene.add(root);
    machine.tower.show('paused');
    colourHands(machine.rule);
    const { xMax, zMin, zMax } = plan.base;
    const label = new CandidateLabel();
    this.element.append(label.element);
    return {
      machine,
      posed: new Posed(),
      label,
      end: frame.localToWorld(new Vector3(xMax, 0, (zMin + zMax) / 2)),
      state: 'paused',
      extent: machine.extent.map((point) => point.clone().add(root.position)),
      floor: 0,
    };
  }

  #move(values: readonly Float64Array[]): boolean {
    let moved = false;
    this.#stands.forEach(({ machine, posed }, i) => {
      const now = values[i];
      if (!now || !posed.differsFrom(now)) return;
      machine.pose(now);
      posed.take(now);
      moved = true;
    });
    return moved;
  }

  #frame(): void {
    if (!this.#picture || this.element.clientWidth === 0) return;
    this.#dirty = false;
    this.#picture.render();
    this.#placeLabels(this.#picture.camera);
  }

  /** In a column at the right of all machines, each at the height of its own, and none on another. */
  #placeLabels(camera: Camera): void {
    const { clientWidth, clientHeight } = this.element;
    const seen = (point: Vector3) => this.#at.copy(point).project(camera);
    let right = -1;
    for (const { extent } of this.#stands) for (const point of extent) right = Math.max(right, seen(point).x);
    const column = Math.min((0.5 + 0.5 * right) * clientWidth, clientWidth - this.#widestLabel);
    let free = 0;
    for (const { label, end } of this.#stands) {
      const { x, y } = seen(end);
      const height = (0.5 - 0.5 * y) * clientHeight;
      const middle = Math.max(height, free + label.height / 2);
      free = middle + label.height / 2;
      label.place(column, middle, (0.5 + 0.5 * x) * clientWidth + GAP, height);
    }
  }

  get #widestLabel(): number {
    return Math.max(0, ...this.#stands.map(({ label }) => label.width));
  }

  /** The machines leave their labels room at the right of the picture. */
  #makeRoom(): void {
    const { clientWidth } = this.element;
    if (clientWidth === 0) return;
    for (const { label } of this.#stands) label.measure();
    const right = EDGE - (2 * this.#widestLabel) / clientWidth;
    const { level, steep } = this.#outlook;
    if (Math.abs(right - level.right) < 1e-3) return;
    level.right = steep.right = right;
    this.#view?.resize(clientWidth, this.element.clientHeight);
  }

  #resize(): void {
    const { clientWidth, clientHeight } = this.element;
    if (clientWidth === 0 || clientHeight === 0) return;
    this.#width = clientWidth;
    this.#picture?.resize(clientWidth, clientHeight);
    this.#view?.resize(clientWidth, clientHeight);
    this.#makeRoom();
    // At once: a canvas of a new size is empty until it is drawn on.
    this.#frame();
  }
}

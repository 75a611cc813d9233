import { ranged } from '../../shared/format.ts';
import { PARAMETERS, type ParameterChanges, type Parameters } from '../../shared/parameters/table.ts';
import { button } from '../app/dom.ts';
import { FILTER_NAMES, FILTER_WORDS, type FilterName } from './filterGain.ts';

export type HandleName = 'crossover' | FilterName;

const HANDLES: readonly HandleName[] = ['crossover', ...FILTER_NAMES];
const WORDS: Readonly<Record<HandleName, string>> = { crossover: 'Crossover', ...FILTER_WORDS };
/** One press of an arrow key; with Shift. */
const FINE = 1.01;
const COARSE = 1.1;

export interface LoopHandlesOptions {
  /** Frequency (Hz) at a place of the plot, CSS pixels from its left. */
  frequencyAt(x: number): number;
  /** Moves a handle to a frequency; `gesture` names the drag, so that it is one step of undo. */
  onMove(name: HandleName, frequency: number, gesture: string): void;
  /** Changes of a filter by its own keys. */
  onShape(changes: ParameterChanges, words: string, gesture: string): void;
}

/**
 * What can be taken hold of on the plot of |L|: the crossover and the filters that are in use. Each is a button: drag it, or move it with
 * the arrow keys; up and down change the depth of a notch, Delete takes a filter out.
 */
export class LoopHandles {
  readonly elements: readonly HTMLElement[];
  readonly #options: LoopHandlesOptions;
  readonly #buttons = new Map<HandleName, HTMLButtonElement>();
  readonly #frequency = new Map<HandleName, number>();
  #parameters: Parameters | null = null;
  #gesture = 0;

  constructor(options: LoopHandlesOptions) {
    this.#options = options;
    this.elements = HANDLES.map((name) => {
      const handle = button(WORDS[name], () => {}, { class: `loop-handle is-${name}` });
      handle.hidden = true;
      handle.setAttribute('role', 'slider');
      handle.addEventListener('pointerdown', (event) => this.#drag(name, handle, event));
      handle.addEventListener('keydown', (event) => this.#key(name, event));
      this.#buttons.set(name, handle);
      return handle;
    });
  }

  /** Puts the handles on the foot of the plot, CSS pixels from its top. `crossover` in Hz, null without one; `xOf` gives CSS pixels from the left, or null outside the plot. */
  place(
    p: Parameters,
    crossover: number | null,
    foot: number,
    xOf: (frequency: number) => number | null,
  ): void {
    this.#parameters = p;
    for (const name of HANDLES) {
      const frequency = name === 'crossover' ? crossover : p[name] ? p[`${name}Frequency`] : null;
      const handle = this.#buttons.get(name)!;
      const x = frequency === null ? null : xOf(frequency);
      handle.hidden = x === null;
      if (frequency === null || x === null) continue;
      this.#frequency.set(name, frequency);
      handle.style.left = `${x}px`;
      handle.style.top = `${foot}px`;
      handle.setAttribute('aria-valuenow', String(frequency));
      handle.setAttribute('aria-valuetext', ranged(frequency, 'Hz'));
      handle.title = `${WORDS[name]} at ${ranged(frequency, 'Hz')}: drag it, or arrow keys`;
    }
  }

  #drag(name: HandleName, handle: HTMLElement, event: PointerEvent): void {
    const gesture = this.#newGesture(name);
    const host = handle.parentElement!.getBoundingClientRect();
    const move = ({ clientX }: PointerEvent) =>
      this.#options.onMove(name, this.#options.frequencyAt(clientX - host.left), gesture);
    handle.setPointerCapture(event.pointerId);
    handle.addEventListener('pointermove', move);
    handle.addEventListener('lostpointercapture', () => handle.removeEventListener('pointermove', move), {
      once: true,
    });
  }

  #key(name: HandleName, event: KeyboardEvent): void {
    const factor = event.shiftKey ? COARSE : FINE;
    const frequency = this.#frequency.get(name)!;
    if (event.key === 'ArrowRight') this.#options.onMove(name, frequency * factor, this.#newGesture(name));
    else if (event.key === 'ArrowLeft')
      this.#options.onMove(name, frequency / factor, this.#newGesture(name));
    else if (name === 'crossover' || !this.#shapeKey(name, event.key, factor)) return;
    event.preventDefault();
    event.stopPropagation();
  }

  /** Whether the key changes a filter. */
  #shapeKey(name: FilterName, key: string, factor: number): boolean {
    const words = FILTER_WORDS[name];
    if (key === 'Delete') {
      this.#options.onShape({ [name]: false }, `${words} out`, this.#newGesture(name));
      return true;
    }
    if (name === 'lowpass' || !['ArrowUp', 'ArrowDown'].includes(key)) return false;
    const depth = `${name}Depth` as const;
    const { min, max } = PARAMETERS[depth];
    const wanted = this.#parameters![depth] * (key === 'ArrowUp' ? factor : 1 / factor);
    const value = Math.min(Math.max(wanted, min), max);
    this.#options.onShape({ [depth]: value }, `${words}: depth`, this.#newGesture(name));
    return true;
  }

  #newGesture(name: HandleName): string {
    return `${name} handle ${this.#gesture++}`;
  }
}

import { valueAt } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { grouped, ranged } from '../../../shared/core/format.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { History } from '../../history/history.ts';
import { cssColour } from '../../ui/look/colours.ts';
import { isMotionUnwelcome } from '../../ui/look/reducedMotion.ts';
import { ErrorTrail } from './errorTrail.ts';
import { BARS, LensRange } from './lensRange.ts';
import { drawLens, type LensColours } from './magnifierPicture.ts';

/** Simulated time that the afterglow holds, s. */
export const SPAN = 1;
/** The scale glides to a new step with this time constant, s. */
const GLIDE = 0.12;

/**
 * The magnifier: what the stage shows at its true size, enlarged until it can be seen. A scale bar from 1 nm to 10 mm tells
 * how much.
 */
export class Magnifier {
  readonly element = document.createElement('figure');
  readonly canvas = document.createElement('canvas');
  /** The numbers beside the lens. */
  readonly caption = document.createElement('figcaption');
  readonly #pen = this.canvas.getContext('2d') as CanvasRenderingContext2D;
  readonly #trail = new ErrorTrail(SPAN);
  readonly #extremes = new Float64Array(2);
  #amplitude = 0;
  readonly #ownRange = new LensRange();
  readonly #numbers: Record<'error' | 'peak' | 'tool' | 'times', HTMLElement>;
  #zoom = Math.log(1 / (BARS * this.#ownRange.bar));
  #numbersTime = Number.NaN;
  #colours: LensColours | null = null;
  #stale = true;
  #rem = 16;
  /** Of the canvas, CSS pixels, as it was last laid out; 0 while it is not seen. */
  #side = 0;
  #lastTime = Number.NaN;

  constructor() {
    this.element.className = 'stage-magnifier';
    this.canvas.setAttribute('role', 'img');
    this.canvas.setAttribute(
      'aria-label',
      'Magnifier: the edge of the table and the position where it should be',
    );
    const row = (name: string, text: string) => {
      const [label, value] = [document.createElement('span'), document.createElement('output')];
      label.textContent = text;
      // Read out on request only: it changes many times a second.
      value.setAttribute('aria-live', 'off');
      value.setAttribute('data-number', name);
      this.caption.append(label, value);
      return value;
    };
    this.#numbers = {
      error: row('error', 'Following error'),
      peak: row('peak', 'Largest in 1 s'),
      tool: row('tool', 'At the tool'),
      times: row('times', 'Enlarged'),
    };
    this.element.append(this.canvas, this.caption);
    new ResizeObserver(() => {
      this.#side = this.canvas.clientWidth;
      this.#stale = true;
    }).observe(this.canvas);
  }

  /** Radius of the lens on the screen, CSS pixels. */
  get radius(): number {
    return this.#side / 2;
  }

  /** After a change of size, theme or text size. */
  restyle(): void {
    this.#colours = null;
    this.#stale = true;
  }

  /** The error at a moment, m: one before the last begins the afterglow anew. */
  remember(time: number, followingError: number): void {
    this.#trail.push(time, followingError);
  }

  /** Takes in the present values. Returns the largest following error of the time that the afterglow holds, m, also between two refreshes. */
  take(now: Float64Array, history: History): number {
    const time = valueAt(now, C.time);
    const followingError = valueAt(now, C.followingError);
    this.remember(time, followingError);
    history.extremes('followingError', time - SPAN, time, this.#extremes);
    // Nothing may be recorded yet.
    const [low, high] = [valueAt(this.#extremes, 0), valueAt(this.#extremes, 1)];
    const present = Math.abs(followingError);
    this.#amplitude = low <= high ? Math.max(-low, high, present) : present;
    return this.#amplitude;
  }

  /**
   * Draws what was taken in. `elapsed` seconds of the clock since the last call; `pixelsPerMetre` of the stage, where the table is; NaN without stage.
   * `writes`: whether the numbers are written with this refresh.
   * `shared`: the range of several lenses that are to show at one scale; whoever shares it lets it follow.
   */
  draw(
    now: Float64Array,
    p: Parameters,
    elapsed: number,
    pixelsPerMetre: number,
    writes: boolean,
    shared: LensRange | null = null,
  ): void {
    const time = valueAt(now, C.time);
    const followingError = valueAt(now, C.followingError);
    const toolError = valueAt(now, C.toolError);
    const amplitude = this.#amplitude;
    this.#ownRange.follow(amplitude, elapsed);
    const { bar } = shared ?? this.#ownRange;
    const wanted = Math.log(1 / (BARS * bar));
    const gliding = Math.abs(wanted - this.#zoom) > 1e-3;
    // Once the time stands still, the numbers are written for the last time: they must not be those of an earlier moment.
    const stands = time === this.#lastTime;
    if (!gliding && !this.#stale && stands && time === this.#numbersTime) return;
    this.#zoom = gliding ? wanted + (this.#zoom - wanted) * Math.exp(-elapsed / glide()) : wanted;
    this.#lastTime = time;

    if (!this.#resize()) return;
    this.#colours ??= lensColours(getComputedStyle(this.element));
    drawLens(
      this.#pen,
      this.canvas.width,
      this.#rem,
      {
        followingError,
        toolError,
        window: p.window,
        inclination: p.inclination,
        time,
        bar,
        barText: ranged(bar, 'm', 1),
        radiiPerMetre: Math.exp(this.#zoom),
      },
      this.#trail,
      SPAN,
      this.#colours,
    );
    if (!writes) return;
    this.#numbersTime = time;
    this.#stale = false;
    this.#measure();
    const numbers = this.#numbers;
    numbers.error.textContent = ranged(followingError, 'm');
    numbers.peak.textContent = ranged(amplitude, 'm');
    numbers.tool.textContent = ranged(toolError, 'm');
    numbers.times.textContent = `× ${timesText(this.radius / (BARS * bar) / pixelsPerMetre)}`;
  }

  /** Size of the page's text, which may change at any time, in pixels of the canvas. */
  #measure(): void {
    const rem = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    this.#rem = (rem * this.canvas.width) / this.#side;
  }

  /** Fits the canvas to its place; false while it has none. */
  #resize(): boolean {
    if (this.#side === 0) return false;
    const size = Math.round(this.#side * devicePixelRatio);
    if (this.canvas.width !== size || this.#stale) {
      this.canvas.width = this.canvas.height = size;
      this.#measure();
    }
    return true;
  }
}

function glide(): number {
  return isMotionUnwelcome() ? 1e-6 : GLIDE;
}

/** One significant digit. */
function timesText(x: number): string {
  return Number.isFinite(x) ? grouped(Number(x.toPrecision(1))) : '—';
}

function lensColours(own: CSSStyleDeclaration): LensColours {
  return {
    glass: cssColour('--panel'),
    ink: cssColour('--ink'),
    line: cssColour('--line-strong'),
    setpoint: cssColour('--q-setpoint'),
    position: cssColour('--q-position'),
    error: cssColour('--q-error'),
    table: own.getPropertyValue('--stage-metal'),
    tableLine: own.getPropertyValue('--stage-metal-line'),
  };
}

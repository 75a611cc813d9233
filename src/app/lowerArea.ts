import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import type { MeasuredLoop } from '../../shared/protocol/analysis.ts';
import type { Bench } from '../bench/bench.ts';
import type { LoopAnalyst, LoopView } from '../loop/loopView.ts';
import { byId, element } from '../ui/dom.ts';
import { prefer, preferredEntries } from '../ui/preferences.ts';
import { createSegmented } from '../ui/segmented.ts';
import { createSplitter } from '../ui/splitter.ts';

interface LowerAreaOptions {
  readonly analyst: LoopAnalyst;
  /** What stands beside the choice while the motion is shown. */
  readonly motionTools: HTMLElement;
  /** Sets parameters from a plot if they are legal; returns what is wrong, or null. */
  change(changes: ParameterChanges, text: string, gesture: string | null): string | null;
  /** The motion is shown again, or has another size. */
  onResize(): void;
}

const AREAS = ['Motion', 'Loop'] as const;

/** Shares of the height below the caption that the area may have: the stage stays in sight. */
const MIN = 0.2;
const MAX = 0.75;
const ENLARGED = 0.65;

/** What lies below the stage: the motion over time, or the loop over frequency, as high as a person wants it. */
export class LowerArea {
  readonly #host = byId('chart-area');
  readonly #view = this.#host.parentElement ?? this.#host;
  readonly #bar: HTMLElement;
  readonly #choice;
  /** Null: as the page lays it out by itself. */
  #share: number | null = null;
  readonly #options: LowerAreaOptions;
  #loop: LoopView | null = null;
  /** Of the pinned run; null: none is pinned. */
  #pinned: Parameters | null = null;
  #bench: Bench;

  constructor(bench: Bench, options: LowerAreaOptions) {
    this.#bench = bench;
    this.#options = options;
    this.#choice = createSegmented('Below the stage', AREAS, () => void this.#showArea());
    const splitter = createSplitter({
      text: 'Height of the charts',
      min: MIN,
      max: MAX,
      share: () => this.#shareAt(this.#host.getBoundingClientRect().top),
      shareAt: (y) => this.#shareAt(y),
      onShare: (share) => this.#setShare(share),
    });
    this.#bar = element('div', { class: 'lower-bar' }, this.#choice.element, options.motionTools);
    this.#host.prepend(splitter, this.#bar);
    const { share } = preferredEntries<'share'>('lower area');
    if (typeof share === 'number' && share >= MIN && share <= MAX) this.#layOut(share);
  }

  get shown(): (typeof AREAS)[number] {
    return this.#choice.value;
  }

  show(bench: Bench): void {
    this.#bench = bench;
    this.#loop?.show(bench);
  }

  /** With a pinned run its loop is pinned too. */
  pin(pinned: boolean): void {
    this.#pinned = pinned ? this.#bench.parameters : null;
    void this.#loop?.pin(this.#pinned);
  }

  /** Once per display refresh, with the newest value of each channel. */
  draw(now: Float64Array, paused: boolean): void {
    this.#loop?.draw(now, paused);
  }

  /** After a change of the page's layout, its size of type or its colours. */
  resize(): void {
    this.#loop?.resize();
  }

  choose(area: (typeof AREAS)[number]): void {
    if (area !== this.shown) this.#choice.choose(area);
  }

  /** Motion over time or the loop over frequency. */
  next(): void {
    this.#choice.next();
  }

  /** Shows the loop with the points of a measured response over it. */
  async layResponse(loop: MeasuredLoop): Promise<void> {
    if (this.shown !== 'Loop') this.#choice.next();
    await this.#showArea();
    this.#loop?.layResponse(loop);
  }

  /** To most of the height and back. */
  enlarge(): void {
    this.#setShare(this.#share === ENLARGED ? null : ENLARGED);
  }

  #shareAt(y: number): number {
    const { bottom } = this.#host.getBoundingClientRect();
    const top = byId('caption').getBoundingClientRect().bottom;
    return (bottom - y) / (bottom - top);
  }

  #setShare(share: number | null): void {
    prefer('lower area', JSON.stringify({ share }));
    this.#layOut(share);
    this.resize();
    this.#options.onResize();
  }

  #layOut(share: number | null): void {
    this.#share = share;
    const { style } = this.#view;
    for (const [name, value] of [
      ['--upper', share && `${1 - share}fr`],
      ['--lower', share && `${share}fr`],
      ['--lower-least', share && '0px'],
    ] as const) {
      if (value) style.setProperty(name, value);
      else style.removeProperty(name);
    }
  }

  /** The loop view is fetched when it is first asked for: whoever only watches needs none of it. */
  async #showArea(): Promise<void> {
    this.#host.setAttribute('data-shows', this.shown.toLowerCase());
    if (this.shown === 'Loop' && !this.#loop) {
      const { LoopView } = await import('../loop/loopView.ts');
      // A second press may have come while the first one was fetching it.
      this.#loop ??= this.#addLoop(LoopView);
    }
    this.#loop?.setShown(this.shown === 'Loop');
    if (this.shown === 'Motion') this.#options.onResize();
  }

  #addLoop(View: typeof LoopView): LoopView {
    const host = byId('loop');
    host.replaceChildren();
    const loop = new View(host, this.#bench, {
      analyst: this.#options.analyst,
      change: this.#options.change,
    });
    this.#bar.append(loop.tools);
    if (this.#pinned) void loop.pin(this.#pinned);
    return loop;
  }
}

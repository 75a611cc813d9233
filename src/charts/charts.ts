import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { History } from '../history/history.ts';
import { Canvas } from '../plot/canvas/canvas.ts';
import { readTheme, type Theme } from '../plot/canvas/theme.ts';
import { type Frame, NO_FRAME } from '../plot/frame.ts';
import type { ColumnSource } from '../plot/strip/columnBuffer.ts';
import { TimeAxis } from '../plot/strip/timeAxis.ts';
import { button, element, setHidden, setText } from '../ui/dom.ts';
import { Cursor, intervalText } from './cursor.ts';
import { pressKey } from './keys.ts';
import { drawCursor, drawGround, drawSelection, drawTimeLabels, momentBox } from './overlay.ts';
import { PointerActions } from './pointer.ts';
import { Row } from './row.ts';
import { ROWS } from './rows.ts';
import { TimeView } from './timeView.ts';
import './charts.css';

interface Charts {
  /**
   * To be called with every frame and every display refresh; draws only if there is something new to be seen. The values in the legends
   * follow when `writes` says so, or at once where a person has changed something.
   */
  draw(writes: boolean): void;
  setParameters(p: Parameters): void;
  /** The simulated time that is in view, s; null before anything was recorded. */
  readonly span: readonly [from: number, to: number] | null;
  /** How much time they show, s: what was set, or what a person zoomed to. */
  readonly windowSeconds: number;
  /** The charts as they are drawn, as a data URL. */
  picture(): string;
  /** Simulated time across the width, s. */
  setWindowSeconds(s: number): void;
  /** The one that is shown at the presenter size. */
  present(title: string): void;
  /** Shows only the charts of these titles; null: all. */
  showOnly(titles: readonly string[] | null): void;
  /** Holds the display while the run goes on. */
  setFrozen(frozen: boolean): void;
  followLive(): void;
  /** Draws a run beneath the present one; null: none. */
  setPinned(pinned: ColumnSource | null): void;
  resize(): void;
  themeChanged(): void;
  dispose(): void;
}

/** Room for one label on the time axis, as a multiple of the text size. */
const TIME_LABEL = 6;
const START_SPAN = 2;

const HELP =
  'Left and right arrow move through time, plus and minus zoom, [ and ] move the cursor, ' +
  'J sets a second cursor at the first, or removes it, ' +
  'Escape follows the run again.';

/** Six stacked strip charts of the run in `host`, on one axis of simulated time. */
export function createCharts(host: HTMLElement, history: History): Charts {
  return new StripCharts(host, history);
}

class StripCharts implements Charts {
  readonly #history: History;
  readonly #view = new TimeView(START_SPAN);
  readonly #axis = new TimeAxis();
  readonly #cursor = new Cursor();
  readonly #canvas = new Canvas();
  readonly #rows = ROWS.map((spec) => new Row(spec, () => this.resize()));
  /** Covers the plots of all rows and takes the pointer. */
  readonly #pad = element('div', { class: 'charts-pad' });
  readonly #axisPlace = element('div', { class: 'charts-axis' });
  readonly #state = element('span', { class: 'charts-state' });
  readonly #follow = button('Follow', () => this.followLive(), {
    keys: 'Esc',
    class: 'charts-follow',
  });
  readonly #spoken = element('p', { class: 'visually-hidden', role: 'status' });
  readonly #body: HTMLElement;
  readonly #root: HTMLElement;
  readonly #pointer: PointerActions;
  readonly #observer = new ResizeObserver(() => this.resize());
  #theme: Theme;
  #axisFrame: Frame = NO_FRAME;
  /** Columns across the width: one per CSS pixel. */
  #columns = 0;
  #measured = false;
  #dirty = true;
  /** State of the history when it was last drawn. */
  #version = -1;
  #epoch = -1;
  #latest = Number.NaN;
  #pinned: ColumnSource | null = null;
  #pinnedEpoch = Number.NaN;
  #readoutDue = false;
  #isTouched = false;

  constructor(host: HTMLElement, history: History) {
    this.#history = history;
    const mode = element('div', { class: 'charts-mode' }, this.#state, this.#follow);
    const foot = element('div', { class: 'charts-foot' }, this.#axisPlace, mode);
    const rows = this.#rows.map((row) => row.element);
    this.#body = element(
      'div',
      { class: 'charts-body' },
      this.#canvas.element,
      this.#pad,
      ...rows,
      foot,
      this.#spoken,
    );
    this.#root = element(
      'div',
      { class: 'charts', role: 'group', tabindex: 0, 'aria-label': 'Strip charts', 'aria-description': HELP },
      this.#body,
    );
    host.append(this.#root);
    this.#theme = readTheme(this.#root);
    this.#pointer = new PointerActions(this.#pad, this.#view, this.#cursor, () => this.#touch());
    this.#root.addEventListener('keydown', (event) => this.#key(event));
    this.#observer.observe(this.#body);
  }

  get windowSeconds(): number {
    return this.#view.span;
  }

  get span(): readonly [number, number] | null {
    const latest = this.#history.latestTime;
    if (Number.isNaN(latest)) return null;
    return [Math.max(this.#view.from, this.#history.oldestTime), Math.min(this.#view.to, latest)];
  }

  picture(): string {
    return this.#canvas.picture(this.#theme.colour('ground'));
  }

  draw(writes: boolean): void {
    if (this.#canvas.blurred) this.resize();
    if (this.#stale()) {
      this.#render();
      this.#readoutDue = true;
    }
    if (this.#readoutDue && (writes || this.#isTouched)) this.#readout();
  }

  setParameters(p: Parameters): void {
    const changed = this.#rows.filter((row) => row.setParameters(p));
    if (changed.length > 0) this.resize();
    else this.#dirty = true;
  }

  setWindowSeconds(s: number): void {
    this.#view.setSpan(s);
    this.#touch();
  }

  present(title: string): void {
    for (const row of this.#rows) row.element.classList.toggle('is-presented', row.title === title);
    this.resize();
  }

  showOnly(titles: readonly string[] | null): void {
    for (const { element, title } of this.#rows) {
      element.hidden = titles !== null && !titles.includes(title);
      element.classList.toggle('is-taught', titles?.includes(title) ?? false);
    }
    this.resize();
  }

  setFrozen(frozen: boolean): void {
    this.#view.freeze(frozen);
    this.#touch();
  }

  followLive(): void {
    this.#view.followLive();
    this.#touch();
  }

  setPinned(pinned: ColumnSource | null): void {
    this.#pinned = pinned;
    this.#touch();
  }

  resize(): void {
    this.#measured = false;
    this.#touch();
  }

  themeChanged(): void {
    this.resize();
  }

  dispose(): void {
    this.#observer.disconnect();
    this.#root.remove();
  }

  /** A person has changed something: it shows at once. */
  #touch(): void {
    this.#dirty = true;
    this.#isTouched = true;
  }

  #key(event: KeyboardEvent): void {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (!pressKey(event.key, this.#view, this.#cursor, this.#columns)) return;
    event.preventDefault();
    this.#touch();
    this.draw(true);
    this.#spoken.textContent = this.#spokenCursor();
  }

  #spokenCursor(): string {
    const { fraction } = this.#cursor;
    const column = this.#cursor.column(this.#columns);
    if (fraction === null || column === null) return '';
    const from = this.#markColumn();
    return [this.#momentText(fraction), ...this.#open().map((row) => row.describe(column, from))].join('; ');
  }

  /** The moment at a fraction of the width, and how far it is from the second cursor. */
  #momentText(fraction: number): string {
    const [moment, { mark }] = [this.#axis.moment(fraction), this.#cursor];
    return mark === null ? moment : `${moment}; ${intervalText(this.#view.timeAt(fraction) - mark)}`;
  }

  /** The column of the second cursor; null where there is none in view. */
  #markColumn(): number | null {
    const fraction = this.#cursor.markFraction(this.#view);
    return fraction === null ? null : Math.floor(fraction * this.#columns);
  }

  /** Whether something would look different than it was drawn. */
  #stale(): boolean {
    if (this.#dirty || (this.#pinned && this.#pinned.epoch !== this.#pinnedEpoch)) return true;
    if (this.#version === this.#history.version) return false;
    if (this.#epoch !== this.#history.epoch) return true;
    return !this.#view.frozen && (this.#view.live || this.#view.to > this.#latest);
  }

  #render(): void {
    if (!this.#measured) this.#measure();
    if (this.#columns === 0) return;
    const [history, view, axis, theme, columns] = [
      this.#history,
      this.#view,
      this.#axis,
      this.#theme,
      this.#columns,
    ];
    const { context } = this.#canvas;
    this.#dirty = false;
    this.#version = history.version;
    if (this.#epoch !== history.epoch) view.restart();
    this.#epoch = history.epoch;
    this.#latest = history.latestTime;
    this.#pinnedEpoch = this.#pinned?.epoch ?? Number.NaN;
    const empty = Number.isNaN(this.#latest);
    view.update(empty ? 0 : history.oldestTime, empty ? 0 : this.#latest, columns);
    axis.fit(view.from, view.to, this.#axisFrame.width / (TIME_LABEL * theme.textSize));

    this.#canvas.clear();
    context.font = theme.font;
    context.textBaseline = 'middle';
    const rows = this.#open();
    for (const row of rows) {
      row.read(history, this.#pinned, view, columns, theme.textSize);
      drawGround(context, theme, axis, row.frame);
      if (!empty) row.draw(context, theme);
    }
    const column = empty ? null : this.#cursor.column(columns);
    const fraction = column === null ? null : (column + 0.5) / columns;
    const frame = this.#axisFrame;
    const box =
      fraction === null ? null : momentBox(context, theme, frame, fraction, this.#momentText(fraction));
    drawTimeLabels(context, theme, axis, frame, box);
    if (empty) this.#drawEmpty();
    else if (this.#pointer.selection) drawSelection(context, theme, rows, this.#pointer.selection);
    const mark = empty ? null : this.#cursor.markFraction(view);
    if (mark !== null)
      drawCursor(context, theme, rows, {
        column: Math.floor(mark * columns),
        x: frame.left + mark * frame.width,
      });
    if (column !== null && fraction !== null)
      drawCursor(context, theme, rows, { column, x: frame.left + fraction * frame.width });
    this.#showMode();
  }

  #drawEmpty(): void {
    const { context } = this.#canvas;
    const [first] = this.#open();
    if (!first) return;
    const { left, top, width, height } = first.frame;
    context.fillStyle = this.#theme.colour('soft');
    context.textAlign = 'center';
    context.fillText('No data yet', left + width / 2, top + height / 2);
  }

  #readout(): void {
    this.#readoutDue = false;
    this.#isTouched = false;
    const column = this.#cursor.column(this.#columns);
    for (const row of this.#open()) row.readout(column, column === null ? null : this.#markColumn());
  }

  #showMode(): void {
    const { live, frozen } = this.#view;
    setText(this.#state, frozen ? 'Frozen' : live ? 'Live' : 'Held');
    setHidden(this.#follow, live);
  }

  #open(): Row[] {
    return this.#rows.filter((row) => row.isOpen);
  }

  #measure(): void {
    const origin = this.#body.getBoundingClientRect();
    const { left, top, width, height } = this.#axisPlace.getBoundingClientRect();
    this.#theme = readTheme(this.#root);
    this.#canvas.resize(origin.width, origin.height);
    this.#axisFrame = { left: left - origin.left, top: top - origin.top, width, height };
    this.#columns = Math.max(0, Math.floor(width));
    for (const row of this.#rows) row.measure(origin);
    this.#measured = true;
  }
}

import { element } from './dom.ts';

const STEP = 0.05;

interface SplitterOptions {
  readonly text: string;
  /** What the part below may have of the height. */
  readonly min: number;
  readonly max: number;
  /** What it has now, as it is laid out. */
  share(): number;
  /** What it would have if its upper edge stood at a height of the window, CSS pixels. */
  shareAt(y: number): number;
  onShare(share: number): void;
}

/** A bar on the edge between two parts of a column: dragged, or moved with the arrow keys. */
export function createSplitter({ text, min, max, share, shareAt, onShare }: SplitterOptions): HTMLElement {
  const bar = element('div', {
    class: 'splitter',
    role: 'separator',
    tabindex: 0,
    'aria-orientation': 'horizontal',
    'aria-label': text,
    'aria-valuemin': Math.round(100 * min),
    'aria-valuemax': Math.round(100 * max),
    title: `${text}: drag it, or use the arrow keys`,
    onpointerdown: (event) => bar.setPointerCapture((event as PointerEvent).pointerId),
    onpointermove: (event) => {
      const { pointerId, clientY } = event as PointerEvent;
      if (bar.hasPointerCapture(pointerId)) move(shareAt(clientY));
    },
    onfocus: () => tell(share()),
    onkeydown: (event) => key(event as KeyboardEvent),
  });

  function tell(now: number): void {
    bar.setAttribute('aria-valuenow', String(Math.round(100 * now)));
  }

  function move(wanted: number): void {
    const legal = Math.min(Math.max(wanted, min), max);
    tell(legal);
    onShare(legal);
  }

  function key(event: KeyboardEvent): void {
    const wanted = { ArrowUp: share() + STEP, ArrowDown: share() - STEP, Home: min, End: max }[event.key];
    if (wanted === undefined) return;
    event.preventDefault();
    move(wanted);
  }

  tell(min);
  return bar;
}

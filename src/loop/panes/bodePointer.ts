import type { BodePane } from './bodePane.ts';

const WHEEL = 0.0015;
const ZOOM = 1.25;
const PAN = 0.1;
/** Pixels that a cursor key moves by: alone, and with the shift key; as in the strip charts. */
const STEP = 1;
const LEAP = 20;

interface BodeActions {
  readonly cursor: number | null;
  setCursor(frequency: number | null, spoken: boolean): void;
  /** Puts a notch on the resonance next to a frequency, Hz. */
  notchAt(frequency: number): void;
  onChange(): void;
}

/**
 * Pointer, wheel and keys of a Bode plot: moving places the cursor, the wheel zooms, a drag pans, a
 * double click puts a notch on a resonance; brackets move the cursor, arrows pan, plus and minus
 * zoom, N puts a notch at the cursor, Escape shows everything again.
 */
export function listenToBode({ element: pad, magnitude: graph }: BodePane, actions: BodeActions): void {
  const { axis } = graph;
  const fractionOf = (event: MouseEvent) => {
    const x = event.clientX - pad.getBoundingClientRect().left - graph.frame.left;
    return Math.min(Math.max(x / graph.frame.width, 0), 1);
  };
  let dragged: { x: number; moved: boolean } | null = null;

  pad.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    pad.setPointerCapture(event.pointerId);
    dragged = { x: event.clientX, moved: false };
  });
  pad.addEventListener('pointermove', (event) => {
    if (dragged) {
      const by = event.clientX - dragged.x;
      if (!dragged.moved && Math.abs(by) < 4) return;
      dragged = { x: event.clientX, moved: true };
      axis.pan(-by / graph.frame.width);
      actions.onChange();
    } else {
      actions.setCursor(axis.frequencyAt(fractionOf(event)), false);
    }
  });
  for (const end of ['pointerup', 'pointercancel'] as const) {
    pad.addEventListener(end, () => {
      dragged = null;
    });
  }
  pad.addEventListener('pointerleave', () => {
    // A cursor that was set by key stays.
    if (document.activeElement !== pad) actions.setCursor(null, false);
  });
  pad.addEventListener('dblclick', (event) => actions.notchAt(axis.frequencyAt(fractionOf(event))));
  pad.addEventListener(
    'wheel',
    (event) => {
      event.preventDefault();
      axis.zoom(Math.exp(event.deltaY * WHEEL), fractionOf(event));
      actions.onChange();
    },
    { passive: false },
  );

  const move = (pixels: number) => {
    const at = actions.cursor === null ? 0.5 : axis.fraction(actions.cursor);
    const fraction = Math.min(
      Math.max(at + (actions.cursor === null ? 0 : pixels / graph.frame.width), 0),
      1,
    );
    actions.setCursor(axis.frequencyAt(fraction), true);
  };
  const about = () => (actions.cursor === null ? 0.5 : axis.fraction(actions.cursor));
  const keys: Readonly<Record<string, () => void>> = {
    '[': () => move(-STEP),
    ']': () => move(STEP),
    '{': () => move(-LEAP),
    '}': () => move(LEAP),
    ArrowLeft: () => axis.pan(-PAN),
    ArrowRight: () => axis.pan(PAN),
    '+': () => axis.zoom(1 / ZOOM, about()),
    '=': () => axis.zoom(1 / ZOOM, about()),
    '-': () => axis.zoom(ZOOM, about()),
    n: () => {
      if (actions.cursor !== null) actions.notchAt(actions.cursor);
    },
    Escape: () => {
      actions.setCursor(null, false);
      axis.showAll();
    },
  };
  pad.addEventListener('keydown', (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const act = keys[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (!act) return;
    event.preventDefault();
    act();
    actions.onChange();
  });
}

export const BODE_KEYS =
  'Brackets move the cursor, N puts a notch on the resonance at it, arrows pan, plus and minus zoom, ' +
  'Escape shows everything.';

interface Clicker {
  next(): void;
  back(): void;
  isTeaching(): boolean;
}

/** Elements that have a use of their own for the arrow keys. */
const KEEPS_ARROWS = '#stage, #charts, #loop, input, select, textarea, .menu';

/** Obeys what a presenter’s clicker sends, page up and down or arrows, for as long as the page lives. */
export function listenForClicker(clicker: Clicker): void {
  window.addEventListener(
    'keydown',
    (event) => {
      if (!clicker.isTeaching() || document.querySelector('dialog[open]')) return;
      if (event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
      const step = { PageDown: 1, PageUp: -1, ArrowRight: 1, ArrowLeft: -1 }[event.key];
      if (step === undefined) return;
      if (event.key.startsWith('Arrow') && document.activeElement?.closest(KEEPS_ARROWS)) return;
      event.preventDefault();
      // A key held down must not leap through the lesson.
      if (event.repeat) return;
      if (step > 0) clicker.next();
      else clicker.back();
    },
    { capture: true },
  );
}

import { isDialogOpen } from '../ui/dialog.ts';
import type { Stroke } from '../ui/keys.ts';

interface Clicker {
  next(): void;
  back(): void;
  isTeaching(): boolean;
}

/** Elements that have a use of their own for the arrow keys. */
const KEEPS_ARROWS = '#stage, #charts, #loop, input, select, textarea, .menu';

/** What a stroke asks of the lesson: a step on or back, or nothing. */
export function clickerStep(stroke: Stroke, arrowsAreTaken: boolean): 'next' | 'back' | null {
  if (stroke.altKey || stroke.ctrlKey || stroke.metaKey || stroke.shiftKey) return null;
  if (stroke.key.startsWith('Arrow') && arrowsAreTaken) return null;
  if (stroke.key === 'PageDown' || stroke.key === 'ArrowRight') return 'next';
  return stroke.key === 'PageUp' || stroke.key === 'ArrowLeft' ? 'back' : null;
}

/** Obeys what a presenter’s clicker sends, page up and down or arrows, for as long as the page lives. */
export function listenForClicker(clicker: Clicker): void {
  window.addEventListener(
    'keydown',
    (event) => {
      if (!clicker.isTeaching() || isDialogOpen()) return;
      const step = clickerStep(event, document.activeElement?.closest(KEEPS_ARROWS) != null);
      if (step === null) return;
      event.preventDefault();
      // A key held down must not leap through the lesson.
      if (!event.repeat) clicker[step]();
    },
    { capture: true },
  );
}

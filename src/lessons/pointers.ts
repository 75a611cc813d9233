import type { Pointer } from '../../shared/lesson/lesson.ts';

const MARK = 'lesson-mark';

/** Frames what a step points at, and nothing else. The table moves: the stage itself points at it. */
export function markPlaces(pointers: readonly Pointer[]): void {
  for (const marked of document.querySelectorAll(`.${MARK}`)) marked.classList.remove(MARK);
  for (const pointer of pointers) {
    const selector = selectorOf(pointer);
    if (selector) document.querySelector(selector)?.classList.add(MARK);
  }
}

/** Where a place is on the page; null: nowhere that stands still. */
export function selectorOf(pointer: Pointer): string | null {
  if ('chart' in pointer) return `.charts-row[aria-label="${pointer.chart}"]`;
  if ('gauge' in pointer) return `.gauge[aria-label="${pointer.gauge}"]`;
  if ('field' in pointer) return `#lesson-field-${pointer.field}`;
  return pointer.stage === 'magnifier' ? '.stage-magnifier' : null;
}

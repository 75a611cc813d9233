import type { Cursor } from './cursor.ts';
import type { TimeView } from './timeView.ts';

const PAN = 0.1;
const ZOOM = 1.25;
/** Columns that a cursor key moves by: alone, and with the shift key. */
const CURSOR_STEP = 1;
const CURSOR_LEAP = 20;

/** What the keys do while the charts have the focus; whether the key meant something. */
export function pressKey(key: string, view: TimeView, cursor: Cursor, columns: number): boolean {
  const about = cursor.fraction ?? 1;
  switch (key) {
    case 'ArrowLeft':
      view.pan(-PAN);
      return true;
    case 'ArrowRight':
      view.pan(PAN);
      return true;
    case '+':
    case '=':
      view.zoom(1 / ZOOM, about);
      return true;
    case '-':
      view.zoom(ZOOM, about);
      return true;
    case '[':
      cursor.move(-CURSOR_STEP, columns, view.newest);
      return true;
    case ']':
      cursor.move(CURSOR_STEP, columns, view.newest);
      return true;
    case '{':
      cursor.move(-CURSOR_LEAP, columns, view.newest);
      return true;
    case '}':
      cursor.move(CURSOR_LEAP, columns, view.newest);
      return true;
    case 'j':
    case 'J':
      cursor.toggleMark(view, columns);
      return true;
    case 'Escape':
      cursor.fraction = null;
      cursor.mark = null;
      view.followLive();
      return true;
    default:
      return false;
  }
}

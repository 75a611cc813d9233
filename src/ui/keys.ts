import { isDialogOpen } from './dialog.ts';

/** Everything that a key or a button can set off. */
export type ActionName =
  | 'runOrPause'
  | 'tick'
  | 'move'
  | 'reset'
  | 'slower'
  | 'faster'
  | 'realTime'
  | 'drive'
  | 'undo'
  | 'redo'
  | 'search'
  | 'tuning'
  | 'gauges'
  | 'charts'
  | 'area'
  | 'enlarge'
  | 'cutaway'
  | 'field'
  | 'sound'
  | 'film'
  | 'resetView'
  | 'freeze'
  | 'live'
  | 'figures'
  | 'pin'
  | 'differences'
  | 'theme'
  | 'currents'
  | 'presenter'
  | 'pen'
  | 'saveScene'
  | 'openFile'
  | 'copyLink'
  | 'gainSheet'
  | 'snapshots'
  | 'study'
  | 'beside'
  | 'lessons'
  | 'help';

export type Actions = Readonly<Record<ActionName, () => void>> & { scene(index: number): void };

interface Key {
  /** What is printed on the key or keys. */
  readonly keys: string;
  readonly label: string;
  readonly action: ActionName | 'scene';
}

/** The keyboard, as the help shows it and as it is obeyed. */
export const KEYS: readonly Key[] = [
  { keys: 'Space', label: 'Run or pause', action: 'runOrPause' },
  { keys: '.', label: 'One tick of the current loop', action: 'tick' },
  { keys: 'M', label: 'One move, then pause', action: 'move' },
  { keys: 'R', label: 'Reset: back to the start of the scene, clears a trip', action: 'reset' },
  { keys: '-', label: 'Slower', action: 'slower' },
  { keys: '+', label: 'Faster', action: 'faster' },
  { keys: '0', label: 'Real time', action: 'realTime' },
  { keys: 'D', label: 'Drive off or on', action: 'drive' },
  { keys: 'Ctrl+Z', label: 'Undo the last change', action: 'undo' },
  { keys: 'Ctrl+Shift+Z', label: 'Redo it', action: 'redo' },
  { keys: '/', label: 'Find a parameter', action: 'search' },
  { keys: 'K', label: 'Show or hide the tuning panel', action: 'tuning' },
  { keys: 'G', label: 'Show or hide the gauges', action: 'gauges' },
  { keys: 'H', label: 'Show or hide the charts', action: 'charts' },
  { keys: 'B', label: 'Below the stage: motion over time, or the loop over frequency', action: 'area' },
  { keys: 'Y', label: 'Enlarge charts or loop to most of the height, and back', action: 'enlarge' },
  { keys: 'C', label: 'Cut-away: closed, phase currents, temperatures, field', action: 'cutaway' },
  {
    keys: 'Q',
    label: 'Inside the motor: its field and the force of each coil, or back to the view before',
    action: 'field',
  },
  { keys: ',', label: 'Sound of the motor force, with its spectrum', action: 'sound' },
  { keys: ';', label: 'Video of the stage: choose a length, or stop recording', action: 'film' },
  { keys: 'V', label: 'Reset the view of the stage', action: 'resetView' },
  { keys: 'F', label: 'Freeze the charts', action: 'freeze' },
  { keys: 'L', label: 'Charts follow the run again', action: 'live' },
  { keys: 'I', label: 'All figures of the last move, with their definitions', action: 'figures' },
  { keys: 'N', label: 'Pin the last cycle behind the charts, or unpin it', action: 'pin' },
  { keys: 'X', label: 'Differences from the pinned run', action: 'differences' },
  { keys: 'T', label: 'Light or dark', action: 'theme' },
  { keys: 'A', label: 'Currents as RMS or as peak values', action: 'currents' },
  { keys: 'P', label: 'Presenter size, for a projector', action: 'presenter' },
  { keys: 'Z', label: 'Draw on the page with the pointer; again, or Escape, to stop', action: 'pen' },
  { keys: 'Ctrl+S', label: 'Save the scene to a file', action: 'saveScene' },
  {
    keys: 'Ctrl+O',
    label: 'Open a scene, session, gain sheet, study or lesson from a file',
    action: 'openFile',
  },
  { keys: 'E', label: 'Gain sheet, to enter the gains into a drive', action: 'gainSheet' },
  { keys: 'S', label: 'Snapshots of the tuning, to keep, compare and apply', action: 'snapshots' },
  { keys: 'W', label: 'Which drive? Up to four side by side on one job', action: 'study' },
  {
    keys: 'U',
    label: 'Two axes beside each other: the bench and another tuning, drive or scene',
    action: 'beside',
  },
  { keys: 'O', label: 'Lessons, to teach at a projector', action: 'lessons' },
  { keys: '1 to 9', label: 'Scenes 1 to 9', action: 'scene' },
  { keys: '?', label: 'This list', action: 'help' },
];

/** Keys that drawings obey by themselves, for the help. */
export const OTHER_KEYS: readonly Pick<Key, 'keys' | 'label'>[] = [
  { keys: 'PageUp PageDown', label: 'Lesson: back and forward, also ← →; digits choose an answer' },
  { keys: '← →', label: 'Candidates side by side: back and forth in time, with Shift in larger steps' },
  { keys: '[ ]', label: 'Charts: move the cursor, with Shift in larger steps' },
  { keys: 'J', label: 'Charts: set a second cursor at the first, or remove it; also Shift and click' },
];

export interface Stroke {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/** How a keystroke is written in the list above. The command key counts as Ctrl. */
function strokeText({ key, ctrlKey, metaKey, shiftKey }: Stroke): string {
  const name = key === ' ' ? 'Space' : key.length === 1 ? key.toUpperCase() : key;
  if (!ctrlKey && !metaKey) return name === '=' ? '+' : name;
  return `Ctrl+${shiftKey ? 'Shift+' : ''}${name}`;
}

/** What a keystroke means: an action, the number of a scene, or nothing. */
export function meaningOf(stroke: Stroke): ActionName | number | null {
  if (stroke.altKey) return null;
  const text = strokeText(stroke);
  if (/^[1-9]$/.test(text)) return Number(text) - 1;
  const key = KEYS.find(({ keys }) => keys === text);
  return key && key.action !== 'scene' ? key.action : null;
}

/** The key of an action, for tooltips. */
export function keyOf(action: ActionName): string {
  return KEYS.find((key) => key.action === action)?.keys ?? '';
}

/** Whether a stroke belongs to the element that has the focus, and must not act on the page. */
function belongsToFocus(stroke: Stroke, focus: Element | null): boolean {
  // A field of a dialog that has just closed has the focus until the page is next laid out.
  if (!focus || focus === document.body || !focus.checkVisibility()) return false;
  const withCtrl = stroke.ctrlKey || stroke.metaKey;
  // The short number fields of the panel leave undo to the page; what was typed is taken back with Escape.
  if (focus.matches('input[type=search], textarea')) return !withCtrl || strokeText(stroke) === 'Ctrl+Z';
  if (focus.matches('input[type=text], select')) return !withCtrl;
  // Stage, charts and loop zoom with these while they have the focus.
  if (focus.closest('#stage, #charts, #loop, .candidates-stage') && '+=-'.includes(stroke.key)) return true;
  // A plot of the loop puts a notch at its cursor with this one.
  if (focus.closest('#loop') && stroke.key.toLowerCase() === 'n') return true;
  // What is chosen already, and a slider, have no use for the space bar.
  if (focus.matches('input[type=radio]:checked, input[type=range]')) return false;
  if (focus.matches('button, a, summary, input')) return [' ', 'Enter'].includes(stroke.key);
  return false;
}

/** Obeys the keyboard for as long as the page lives; `actions` says what can be set off at present. */
export function listenToKeys(actions: () => Partial<Actions>): void {
  // While capturing: the fields of the panel keep their keystrokes to themselves.
  window.addEventListener(
    'keydown',
    (event) => {
      if (isDialogOpen() || belongsToFocus(event, document.activeElement)) return;
      const meaning = meaningOf(event);
      const action = meaning === null ? undefined : actionOf(actions(), meaning);
      if (!action) return;
      event.preventDefault();
      if (!event.repeat || meaning === 'tick') action();
    },
    { capture: true },
  );
}

function actionOf(actions: Partial<Actions>, meaning: ActionName | number): (() => void) | undefined {
  if (typeof meaning !== 'number') return actions[meaning];
  const { scene } = actions;
  return scene && (() => scene(meaning));
}

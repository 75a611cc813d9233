import type { AxisRun } from '../bench/axisRun.ts';
import { presentScene } from '../bench/bench.ts';
import type { BenchActions } from '../bench/benchActions.ts';
import type { Documents } from '../bench/documents.ts';
import type { Store } from '../bench/store.ts';
import type { TuningPanel } from '../tuning/tuningPanel.ts';
import type { CurrentSwitch } from '../ui/currentSwitch.ts';
import { askForText } from '../ui/files.ts';
import type { Actions } from '../ui/keys.ts';
import type { Messages } from '../ui/messages.ts';
import { togglePen } from '../ui/pen.ts';
import type { ThemeSwitch } from '../ui/theme.ts';
import type { Bar } from './bar.ts';
import type { BesideDoor } from './besideDoor.ts';
import type { Dialogs } from './dialogs.ts';
import type { Keeper } from './kept/keeper.ts';
import type { Layout } from './layout.ts';
import type { LessonDoor } from './lessonDoor.ts';
import type { SmallDialogs } from './smallDialogs/smallDialogs.ts';
import type { StudyDoor } from './studyDoor.ts';
import type { View } from './view.ts';
import { withPart } from './withPart.ts';

/** The parts of the page that its actions reach. */
export interface ActionParts {
  readonly messages: Messages;
  readonly store: Store;
  readonly bench: BenchActions;
  readonly run: AxisRun;
  readonly view: View;
  readonly layout: Layout;
  readonly theme: ThemeSwitch;
  readonly currents: CurrentSwitch;
  readonly bar: Bar;
  readonly panel: TuningPanel;
  readonly dialogs: Dialogs;
  readonly documents: Documents;
  readonly door: StudyDoor;
  readonly besideDoor: BesideDoor;
  readonly keeper: Keeper;
  readonly lessons: LessonDoor;
}

/** What keys, buttons and menus of the bench set off. The parts need only be there when an action is. */
export function createActions(parts: ActionParts): Actions {
  const showCharts = () => parts.layout.show('charts', true);
  const openSmall = (name: string, open: (dialogs: SmallDialogs) => void) =>
    withPart(parts, name, () => parts.dialogs.openSmall(open));
  return {
    runOrPause: () => parts.run.runOrPause(),
    tick: () => parts.run.tick(),
    move: () => parts.run.move(),
    reset: () => parts.run.reset(),
    slower: () => parts.bar.changeTimeScale(-1),
    faster: () => parts.bar.changeTimeScale(1),
    realTime: () => parts.bar.changeTimeScale(0),
    drive: () => parts.bench.toggleDrive(),
    undo() {
      const text = parts.store.undoText;
      parts.store.undo();
      if (text !== null) parts.messages.note(`Undone: ${text}.`);
    },
    redo() {
      const text = parts.store.redoText;
      parts.store.redo();
      if (text !== null) parts.messages.note(`Redone: ${text}.`);
    },
    search() {
      parts.layout.show('panel', true);
      parts.panel.focusSearch();
    },
    tuning: () => parts.layout.toggle('panel'),
    gauges: () => parts.layout.toggle('gauges'),
    charts: () => parts.layout.toggle('charts'),
    area() {
      showCharts();
      parts.view.nextArea();
    },
    enlarge() {
      showCharts();
      parts.view.enlargeArea();
    },
    cutaway: () => parts.view.nextCutaway(),
    field: () => parts.view.toggleField(),
    sound: () => parts.view.toggleSound(),
    film: () => parts.view.toggleFilm(),
    resetView: () => parts.view.resetView(),
    freeze: () => parts.view.toggleFrozen(),
    live: () => parts.view.followLive(),
    figures: () => parts.dialogs.figures.open(),
    pin: () => parts.messages.note(parts.view.comparison.toggle()),
    differences: () => parts.view.comparison.open(),
    theme: () => parts.theme.toggle(),
    currents: () => parts.currents.toggle(),
    presenter: () => parts.layout.togglePresenting(),
    pen: togglePen,
    saveScene: () => parts.documents.saveScene(presentScene(parts.store.bench)),
    openFile: () => askForText(parts.documents),
    copyLink: () => void parts.documents.copyLink(presentScene(parts.store.bench)),
    gainSheet: () => withPart(parts, 'The gain sheet', () => parts.dialogs.openGainSheet()),
    snapshots: () => openSmall('Tuning snapshots', ({ snapshots }) => snapshots.open()),
    beside: () => withPart(parts, 'The second axis', () => parts.besideDoor.toggle()),
    study: () => withPart(parts, 'The study', () => parts.door.toggle()),
    lessons: () => withPart(parts, 'Lessons', () => parts.lessons.openMenu()),
    help: () => openSmall('The list of keys', ({ help }) => help.open()),
    scene: (index) => parts.bench.openShelfScene(index),
  };
}

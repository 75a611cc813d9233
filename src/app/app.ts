import { PRESETS } from '../../scenes/index.ts';
import { parameterWarnings } from '../../shared/axis/warnings.ts';
import { isStudyLink } from '../../shared/files/studyLinkKey.ts';
import type { AxisStatus, Frame, TuningSession } from '../../shared/protocol/axis.ts';
import { type Bench, benchOf, presentScene } from '../bench/bench.ts';
import { BenchActions } from '../bench/benchActions.ts';
import { createDocuments } from '../bench/documents.ts';
import { openingScene } from '../bench/opening.ts';
import { Replay } from '../bench/replay.ts';
import { RunRequest } from '../bench/runRequest.ts';
import { Store } from '../bench/store.ts';
import { useGains } from '../bench/useGains.ts';
import { sameSituation, sendToAxis } from '../bench/workerSync.ts';
import { AnalysisClient } from '../clients/analysisClient.ts';
import { AxisClient } from '../clients/axisClient.ts';
import { FiguresDialog } from '../compare/figuresDialog.ts';
import { SnapshotsDialog } from '../compare/snapshotsDialog.ts';
import { MoveListDialog } from '../tuning/moveListDialog.ts';
import type { PretuneDialog } from '../tuning/pretune/pretuneDialog.ts';
import type { TraceDialog } from '../tuning/trace/traceDialog.ts';
import { TuningPanel } from '../tuning/tuningPanel.ts';
import { byId } from '../ui/dom.ts';
import { askForText, fileName, saveUrl, takeDrops } from '../ui/files.ts';
import { type Actions, listenToKeys } from '../ui/keys.ts';
import { createMessages } from '../ui/messages.ts';
import { ThemeSwitch } from '../ui/theme.ts';
import { createBar } from './bar.ts';
import { Caption } from './caption.ts';
import { createCautions } from './cautionsDialog.ts';
import { startFrameLoop } from './frameLoop.ts';
import { createHelp } from './help.ts';
import { Layout } from './layout.ts';
import { StudyDoor } from './studyDoor.ts';
import { View } from './view.ts';

/** Puts the page together and starts it. */
export function startApp(): void {
  const messages = createMessages(byId('messages'));
  const opening = openingScene(location.hash);
  const store = new Store(benchOf(opening.scene));
  const bench = new BenchActions(store, messages);
  const axis = new AxisClient(opening.scene, (error) =>
    messages.problems(
      'The simulation stopped',
      [{ field: '', value: undefined, message: error }],
      'The bench keeps its settings. Why the simulation stopped:',
      { label: 'Start it again', action: () => axis.restart(presentScene(store.bench)) },
    ),
  );
  const analysis = new AnalysisClient();
  const documents = createDocuments({
    messages,
    openScene: bench.openScene.bind(bench),
    replay,
    parameters: () => store.bench.parameters,
    useGains: (changes, name) => useGains(store, messages, changes, `gains of ${name}`),
    openStudy: (name, text) => void door.openText(name, text),
  });
  const help = createHelp();
  const cautions = createCautions();
  const moveList = new MoveListDialog((moves) => bench.useMoves(moves));
  const figures = new FiguresDialog();
  const snapshots = new SnapshotsDialog({
    parameters: () => store.bench.parameters,
    onApply: (changes, label) => useGains(store, messages, changes, label),
  });

  let status: AxisStatus | null = null;
  let run = 0;
  const request = new RunRequest();
  let replaying: Replay | null = null;
  /** The store is told what the worker already knows. */
  let following = false;

  const view = new View(store.bench, {
    onHand: (position) => axis.send('hand', position),
    onFreeze: () => view.toggleFrozen(),
    onFigures: () => figures.open(),
    onPin: () => actions.pin(),
    onDifferences: () => actions.differences(),
    onReset: () => actions.reset(),
    onUndo: () => actions.undo(),
    onShape: (changes, label, gesture) => bench.shape(changes, label, gesture),
    analyst: analysis,
  });
  const layout = new Layout(() => view.resize());
  const theme = new ThemeSwitch((is) => view.setTheme(is));
  const caption = new Caption(byId('caption'));

  const actions: Actions = {
    runOrPause: () => axis.send(request.toggle(status?.state ?? 'paused') === 'running' ? 'run' : 'pause'),
    tick: () => axis.send('stepTick'),
    move: () => axis.send('runOneMove'),
    reset() {
      replaying = null;
      axis.send('reset');
    },
    slower: () => bar.changeTimeScale(-1),
    faster: () => bar.changeTimeScale(1),
    realTime: () => bar.changeTimeScale(0),
    drive: () => bench.toggleDrive(),
    undo: () => store.undo(),
    redo: () => store.redo(),
    search() {
      layout.show('panel', true);
      panel.focusSearch();
    },
    tuning: () => layout.toggle('panel'),
    gauges: () => layout.toggle('gauges'),
    charts: () => layout.toggle('charts'),
    area() {
      layout.show('charts', true);
      view.nextArea();
    },
    enlarge() {
      layout.show('charts', true);
      view.enlargeArea();
    },
    cutaway: () => view.nextCutaway(),
    resetView: () => view.resetView(),
    freeze: () => view.toggleFrozen(),
    live: () => view.followLive(),
    figures: () => figures.open(),
    pin: () => messages.note(view.comparison.toggle()),
    differences: () => view.comparison.open(),
    theme: () => theme.toggle(),
    presenter: () => layout.togglePresenting(),
    saveScene: () => documents.saveScene(presentScene(store.bench)),
    openFile: () => askForText(documents.open),
    copyLink: () => documents.copyLink(presentScene(store.bench)),
    gainSheet: openGainSheet,
    snapshots: () => snapshots.open(),
    study: () => void door.toggle(),
    help: () => help.open(),
    scene: (index) => bench.openShelfScene(index),
  };

  const moreHelp = [{ label: 'Before you touch real hardware', action: () => cautions.open() }];
  const door = new StudyDoor({
    messages,
    openOnBench: (scene) => bench.openScene(scene, `${scene.title} from the study`),
    onBench: showBench,
    common: actions,
    isDark: () => theme.theme === 'dark',
    isPresenting: () => layout.isPresenting,
    help: moreHelp,
  });
  const bar = createBar(byId('bar'), {
    actions,
    layout,
    theme: () => theme.theme,
    onTimeScale: (timeScale) => axis.send('setTimeScale', timeScale),
    onPreset: (id) => bench.choosePreset(id),
    moreFiles: [
      { label: 'Save tuning session', action: () => axis.recording().then(documents.saveSession) },
      { label: 'Measured trace …', action: () => void openTrace() },
      { label: 'Save picture of the stage', action: savePicture },
    ],
    moreHelp,
  });
  const panel = new TuningPanel(byId('panel'), store.bench, {
    propose: (name, value, gesture) => bench.propose(name, value, gesture),
    startGains: (crossover) => bench.startGains(crossover),
    resetAll: () => bench.resetAll(),
    undo: actions.undo,
    redo: actions.redo,
    cautions: () => cautions.open(),
    moveList: () => moveList.open(store.bench.origin.moves, store.bench.parameters),
    pretune: () => void openPretune(),
  });

  let pretune: PretuneDialog | null = null;
  /** Fetched when it is first asked for, as the loop view is. */
  async function openPretune(): Promise<void> {
    const { PretuneDialog } = await import('../tuning/pretune/pretuneDialog.ts');
    pretune ??= new PretuneDialog({
      scene: () => presentScene(store.bench),
      use: (changes, label) => bench.shape(changes, label, null),
    });
    pretune.open();
  }

  let trace: TraceDialog | null = null;
  async function openTrace(): Promise<void> {
    const { TraceDialog } = await import('../tuning/trace/traceDialog.ts');
    trace ??= new TraceDialog({
      parameters: () => store.bench.parameters,
      lay: (trace) => view.comparison.layTrace(trace),
      use: (changes, label) => bench.shape(changes, label, null),
    });
    trace.open();
  }

  const offerCrossover = ({ origin: { preset } }: Bench) => {
    if (preset) panel.offerCrossover(PRESETS[preset]!.crossover);
  };
  store.subscribe((is, was) => {
    if (is.origin.preset !== was.origin.preset) offerCrossover(is);
    if (!following) {
      if (!sameSituation(is, was)) replaying = null;
      sendToAxis(axis, is, was, status?.state === 'running');
    }
    view.show(is);
    show(is);
  });

  function show(is: Bench): void {
    bar.show(is);
    caption.show(presentScene(is));
    panel.show(is);
    panel.showSteps(store.undoText, store.redoText);
    view.offerUndo(store.undoText !== null);
    warn();
  }

  function warn(): void {
    const fresh = caption.warn([...parameterWarnings(store.bench.parameters), ...(status?.warnings ?? [])]);
    if (fresh.length > 0) messages.say(fresh.join(' '));
  }

  function ingest(frame: Frame): void {
    const was = status;
    status = frame.status;
    run = frame.run;
    request.answer(status.state);
    const tripped = view.ingest(frame);
    if (tripped) messages.say(tripped, true);
    figures.show(status.lastMove);
    bar.showStatus(status, store.bench.parameters.drive);
    if (status.state !== was?.state) view.showState(status.state);
    if (status.warnings.length !== was?.warnings.length) warn();
    if (replaying?.hasBegun(run)) followReplay(replaying, status.tick);
  }

  function replay(session: TuningSession): void {
    axis.send('replay', session);
    silently(() => bench.openScene(session.scene, `Replay of ${session.scene.title}`));
    replaying = new Replay(session, run);
    messages.note('Replaying the tuning session.');
  }

  function followReplay(replay: Replay, tick: number): void {
    const changes = replay.changesUpTo(tick);
    if (changes) silently(() => store.change(changes, 'changes of the replayed session', 'replay'));
    if (!replay.hasEnded(tick)) return;
    replaying = null;
    messages.note('The replay is through.');
  }

  /** For changes of the store that the worker makes by itself. */
  function silently(change: () => void): void {
    following = true;
    change();
    following = false;
  }

  /** Loaded when it is asked for: the page opens sooner without it. */
  async function openGainSheet(): Promise<void> {
    const { showGainSheet } = await import('./showGainSheet.ts');
    await showGainSheet(presentScene(store.bench), view.comparison.moveOfPresent, analysis, messages);
  }

  function savePicture(): void {
    saveUrl(fileName(store.bench.origin.title, 'png'), view.picture());
  }

  takeDrops(documents.open);
  listenToKeys(() => door.keys ?? actions);
  window.addEventListener('hashchange', () => {
    if (isStudyLink(location.hash)) {
      void door.openLink(location.hash);
      return;
    }
    const { scene, problems } = openingScene(location.hash);
    if (problems.length > 0) refuseLink(problems);
    else bench.openScene(scene, `Link to ${scene.title}`);
  });
  const refuseLink = (problems: typeof opening.problems) =>
    messages.problems(
      'The link was not opened',
      problems,
      'The bench is as it was. What is wrong with the link:',
    );

  offerCrossover(store.bench);
  show(store.bench);
  if (opening.problems.length > 0) refuseLink(opening.problems);
  let stopFrames: (() => void) | null = null;
  /** While the study is shown, the bench rests. */
  function showBench(shown: boolean): void {
    stopFrames?.();
    stopFrames = shown ? startFrameLoop(axis, { ingest, draw: (now) => view.draw(now) }) : null;
    if (shown) view.resize();
    else if (status?.state === 'running') actions.runOrPause();
  }

  showBench(true);
  if (isStudyLink(location.hash)) void door.openLink(location.hash);
  else if (!matchMedia('(prefers-reduced-motion: reduce)').matches) actions.runOrPause();
}

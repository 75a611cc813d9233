import { PRESETS } from '../../scenes/index.ts';
import { coggingWarnings } from '../../shared/axis/coggingWarnings.ts';
import { parameterWarnings } from '../../shared/axis/warnings.ts';
import { type Problem, problemTexts } from '../../shared/core/problem.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { AS_WRITTEN, sentenceText } from '../../shared/core/sentence.ts';
import { NOTICE_TEXTS } from '../../shared/figures/tripText.ts';
import { isLessonLink } from '../../shared/files/lessonLinkKey.ts';
import { isStudyLink } from '../../shared/files/studyLinkKey.ts';
import type { Frame } from '../../shared/protocol/axis.ts';
import { AxisRun } from '../bench/axisRun.ts';
import { BENCH_WORDING, type Bench, benchOf, presentScene } from '../bench/bench.ts';
import { BenchActions } from '../bench/benchActions.ts';
import { Documents } from '../bench/documents.ts';
import { type Opening, openingScene } from '../bench/opening.ts';
import { Store } from '../bench/store.ts';
import { useGains } from '../bench/useGains.ts';
import { AnalysisClient } from '../clients/analysisClient.ts';
import { CoggingClient } from '../clients/coggingClient.ts';
import { errorText } from '../clients/errorText.ts';
import { LearnMoveClient } from '../clients/learnMoveClient.ts';
import { isJobUnderWay } from '../clients/workerHost.ts';
import { TuningPanel } from '../tuning/tuningPanel.ts';
import { CurrentSwitch } from '../ui/currentSwitch.ts';
import { isDialogOpen } from '../ui/dialog.ts';
import { byId } from '../ui/dom.ts';
import { askForText, takeDrops } from '../ui/files.ts';
import { listenToKeys } from '../ui/keys.ts';
import { isMotionUnwelcome } from '../ui/look/reducedMotion.ts';
import { Messages } from '../ui/messages.ts';
import { ThemeSwitch } from '../ui/theme.ts';
import { SLOW_MOTION_LABEL, SLOW_MOTION_TITLE } from '../ui/transport/slowMotionText.ts';
import { type ActionParts, createActions } from './actions.ts';
import { Bar } from './bar.ts';
import { BenchForLessons } from './benchForLessons.ts';
import { BesideDoor } from './besideDoor.ts';
import { Caption } from './caption.ts';
import { Dialogs } from './dialogs.ts';
import { startFrameLoop } from './frameLoop.ts';
import { keepOffline } from './keepOffline.ts';
import { Keeper } from './kept/keeper.ts';
import { STEPS } from './kept/work.ts';
import { Layout } from './layout.ts';
import { learnCogging, saveCogging } from './learnCogging.ts';
import { learnMove } from './learnMove.ts';
import { LessonDoor } from './lessonDoor.ts';
import { PresentLoop } from './presentLoop.ts';
import { saveItems, saveVideo } from './save/saveData.ts';
import { shapeForLoop } from './shapeForLoop.ts';
import type { SmallDialogs } from './smallDialogs/smallDialogs.ts';
import { StudyDoor } from './studyDoor.ts';
import { View } from './view.ts';
import { withPart } from './withPart.ts';

/** Puts the page together and starts it. */
export function startApp(): void {
  new App(openingScene(location.hash)).start();
}

/** The page: the bench with all that shows and changes it, and the door to the study. */
class App implements ActionParts {
  readonly messages = new Messages(byId('messages'));
  readonly store: Store;
  readonly bench: BenchActions;
  readonly run: AxisRun;
  readonly documents: Documents;
  readonly view: View;
  readonly layout: Layout;
  readonly theme: ThemeSwitch;
  readonly currents: CurrentSwitch;
  readonly dialogs: Dialogs;
  readonly door: StudyDoor;
  readonly besideDoor: BesideDoor;
  readonly lessons: LessonDoor;
  readonly bar: Bar;
  readonly panel: TuningPanel;
  readonly #analysis = new AnalysisClient();
  readonly #presentLoop = new PresentLoop(this.#analysis, ({ stable, crossover }) =>
    this.panel.showCrossover(crossover, stable),
  );
  readonly #cogging = new CoggingClient();
  readonly #learning = new LearnMoveClient();
  readonly #opening: Opening;
  readonly #caption: Caption;
  readonly #actions = createActions(this);
  readonly keeper: Keeper;
  #stopFrames: (() => void) | null = null;

  constructor(opening: Opening) {
    this.#opening = opening;
    this.store = new Store(benchOf(opening.scene));
    this.bench = new BenchActions(this.store, this.messages);
    this.run = new AxisRun(this.store, this.bench, this.messages, () => this.bar.showStopped());
    this.documents = this.#createDocuments();
    const analysis = this.#analysis;
    this.view = this.#createView(analysis);
    this.layout = new Layout(() => this.view.resize());
    this.currents = new CurrentSwitch(() => this.#showUnits());
    this.theme = new ThemeSwitch((theme) => this.view.setTheme(theme));
    this.#caption = new Caption(byId('caption'));
    this.dialogs = new Dialogs({
      ...this,
      analysis,
      comparison: this.view.comparison,
      keeper: () => this.keeper,
      status: () => this.run.status,
      openOnBench: (scene, text) => this.#openScene(scene, text),
    });
    const help = [
      {
        label: 'How this is tested',
        action: () => this.#openSmall('How this is tested', ({ tested }) => tested.open()),
      },
      { label: 'Before you touch real hardware', action: () => this.dialogs.cautions.open() },
    ];
    this.door = new StudyDoor({
      messages: this.messages,
      openOnBench: (scene) => this.#openScene(scene, `${scene.title} from the study`),
      onBench: (shown) => this.#showBench(shown),
      common: this.#actions,
      isDark: () => this.theme.theme === 'dark',
      isRms: () => this.currents.isRms,
      isPresenting: () => this.layout.isPresenting,
      help,
      onChange: () => this.keeper.changed(),
    });
    this.besideDoor = new BesideDoor({
      bench: () => this.store.bench,
      openOnBench: (scene) => this.#openScene(scene, `${scene.title} from beside the bench`),
      onBench: (shown) => this.#showBench(shown),
      common: this.#actions,
    });
    this.keeper = new Keeper({
      store: this.store,
      messages: this.messages,
      study: () => this.door.kept(STEPS),
      openStudy: (study) => this.#withPart('The study', () => this.door.restore(study)),
    });
    const bench = new BenchForLessons({ store: this.store, run: this.run, view: this.view, analysis });
    this.lessons = new LessonDoor({
      messages: this.messages,
      bench,
      openFile: () => askForText(this.documents),
      common: this.#actions,
    });
    this.bar = new Bar(byId('bar'), {
      actions: this.#actions,
      layout: this.layout,
      theme: () => this.theme.theme,
      isRms: () => this.currents.isRms,
      slowMotion: {
        label: SLOW_MOTION_LABEL,
        title: SLOW_MOTION_TITLE,
        action: () => this.run.toggleSlowMotion(),
        isOn: () => this.run.slowMotion,
      },
      onTimeScale: (timeScale) => this.run.setTimeScale(timeScale),
      onPreset: (id) => this.bench.choosePreset(id),
      moreFiles: [
        { label: 'Save tuning session', action: () => void this.#saveSession() },
        {
          label: 'Measured trace …',
          action: () => this.#withPart('Measured trace', () => this.dialogs.openTrace()),
        },
        {
          label: 'Measured frequency response …',
          action: () =>
            this.#withPart('Measured frequency response', () =>
              this.dialogs.openResponse((loop) => void this.view.layResponse(loop)),
            ),
        },
        {
          label: 'Earlier work …',
          action: () => this.#openSmall('Earlier work', ({ earlierWork }) => earlierWork.open()),
        },
        {
          label: 'Name of the project …',
          action: () => this.#openSmall('The name of the project', ({ projectName }) => projectName.open()),
        },
        ...saveItems({ ...this, actions: this.#actions, analysis }),
      ],
      moreHelp: help,
    });
    this.panel = this.#createPanel();
  }

  start(): void {
    takeDrops(this.documents);
    listenToKeys(() => this.door.keys ?? this.besideDoor.keys ?? this.lessons.keys ?? this.#actions);
    window.addEventListener('hashchange', () => this.#openAddress());
    this.store.subscribe((is, was) => {
      if (is.origin.preset !== was.origin.preset) this.#offerCrossover(is);
      this.view.show(is);
      this.#show(is);
    });
    this.#offerCrossover(this.store.bench);
    this.#show(this.store.bench);
    if (this.#opening.problems.length > 0) this.#refuseLink(this.#opening.problems);
    this.#showBench(true);
    void this.keeper.offer();
    void keepOffline(this.messages, () => this.keeper.keep());
    if (this.#openPartLink()) return;
    if (!isMotionUnwelcome()) this.run.runOrPause();
  }

  /** Opens what only a part that is loaded then knows; returns whether the address asks for one. */
  #openPartLink(): boolean {
    const { hash } = location;
    if (isStudyLink(hash)) this.#withPart('The study', () => this.door.openLink(hash));
    else if (isLessonLink(hash)) this.#withPart('The lesson', () => this.lessons.openLink(hash));
    else return false;
    return true;
  }

  /** Anything else on the bench ends a lesson: what was there before it can be undone to. */
  #openScene(scene: Scene, text: string): void {
    this.lessons.leave();
    this.bench.openScene(scene, text);
  }

  #withPart(name: string, work: () => Promise<unknown>): void {
    withPart(this, name, work);
  }

  #openSmall(name: string, open: (dialogs: SmallDialogs) => unknown): void {
    this.#withPart(name, () => this.dialogs.openSmall(open));
  }

  #createDocuments(): Documents {
    return new Documents({
      messages: this.messages,
      openScene: (scene, text) => this.#openScene(scene, text),
      replay: (session) => {
        this.lessons.leave();
        this.run.replay(session);
      },
      parameters: () => this.store.bench.parameters,
      useGains: (changes, name) => {
        this.lessons.leave();
        useGains(this.store, this.messages, changes, `gains of ${name}`);
      },
      openStudy: (name, text) => this.#withPart('The study', () => this.door.openText(name, text)),
      openTolerance: (study, text) => {
        this.#openScene(study.scene, text);
        this.#withPart('The tolerance study', () => this.dialogs.openTolerance(study));
      },
      openLesson: (name, text) => this.#withPart('The lesson', () => this.lessons.openText(name, text)),
    });
  }

  #createView(analyst: AnalysisClient): View {
    const actions = this.#actions;
    return new View(this.store.bench, {
      onHand: (position) => this.run.pull(position),
      onFreeze: actions.freeze,
      onFigures: actions.figures,
      onPin: actions.pin,
      onDifferences: actions.differences,
      onReset: actions.reset,
      onUndo: actions.undo,
      onShape: (changes, text, gesture) => this.bench.shape(changes, text, gesture),
      onVideo: (video, ending) => saveVideo(this, video, ending),
      say: (text) => this.messages.say(text),
      analyst,
      withPart: (name, work) => this.#withPart(name, work),
    });
  }

  #createPanel(): TuningPanel {
    return new TuningPanel(byId('panel'), this.store.bench, {
      propose: (name, value, gesture) => this.bench.propose(name, value, gesture),
      startGains: (crossover) => this.bench.startGains(crossover),
      resetAll: () => this.bench.resetAll(),
      undo: this.#actions.undo,
      redo: this.#actions.redo,
      cautions: () => this.dialogs.cautions.open(),
      moveList: () => this.#openSmall('The move list', (dialogs) => dialogs.openMoveList()),
      learnMove: () => void learnMove(this.store, this.bench, this.#learning, this.messages),
      forgetMove: () => this.bench.useLearnedMove(null),
      learnCogging: () => void learnCogging(this.store, this.bench, this.#cogging, this.messages),
      removeCogging: () => this.bench.removeCoggingTable(),
      saveCogging: () => saveCogging(this.store, this.messages),
      pretune: () => this.#withPart('Pretuning', () => this.dialogs.openPretune()),
      tolerance: () => this.#withPart('The tolerance study', () => this.dialogs.openTolerance()),
      wearTest: () => this.#withPart('The test of wear', () => this.dialogs.openWearTest()),
      shapeForLoop: () =>
        void shapeForLoop(this.store.bench.parameters, this.bench, this.#analysis, this.messages),
    });
  }

  #show(bench: Bench): void {
    const { undoText, redoText } = this.store;
    this.bar.show(bench);
    this.#caption.show(presentScene(bench));
    this.panel.show(bench);
    this.#presentLoop.follow(bench.parameters);
    this.panel.showSteps(undoText, redoText);
    this.view.offerUndo(undoText !== null);
    this.#warn();
  }

  /** Texts with currents, after a change of their form. */
  #showUnits(): void {
    this.panel.refresh();
    this.#warn();
    this.view.refresh();
  }

  #warn(): void {
    const { bench } = this.store;
    const ofParameters = [...parameterWarnings(bench.parameters), ...coggingWarnings(presentScene(bench))];
    const fresh = this.#caption.warn([
      ...ofParameters.map((warning) => sentenceText(warning, BENCH_WORDING)),
      ...(this.run.status?.notices ?? []).map((notice) => NOTICE_TEXTS[notice]),
    ]);
    if (fresh.length > 0) this.messages.say(fresh.join(' '));
  }

  #ingest(frame: Frame, draws: boolean): void {
    const was = this.run.status;
    const { status } = frame;
    this.run.take(frame);
    const tripped = this.view.ingest(frame, draws);
    if (tripped) this.messages.say(tripped, true);
    this.dialogs.figures.show(status.lastMove, status.energyResidual);
    this.bar.showStatus(status, this.store.bench.parameters.drive);
    if (status.state !== was?.state) this.view.showState(status.state);
    if (status.notices.join() !== was?.notices.join()) this.#warn();
    this.run.followReplay();
  }

  #offerCrossover({ origin: { preset } }: Bench): void {
    const crossover = preset === null ? undefined : PRESETS[preset]?.crossover;
    if (crossover !== undefined) this.panel.offerCrossover(crossover);
  }

  async #saveSession(): Promise<void> {
    try {
      const session = await this.run.recording();
      // The simulation does not know that the project was named since.
      const { id, title } = this.store.bench.origin;
      await this.documents.saveSession({ ...session, scene: { ...session.scene, id, title } });
    } catch (error) {
      this.messages.note(`Nothing was saved: ${errorText(error)}`);
    }
  }

  #openAddress(): void {
    if (this.#openPartLink()) return;
    const { scene, problems } = openingScene(location.hash);
    if (problems.length > 0) this.#refuseLink(problems);
    else this.#openScene(scene, `Link to ${scene.title}`);
  }

  #refuseLink(problems: readonly Problem[]): void {
    this.messages.problems(
      'The link was not opened',
      problemTexts(problems, AS_WRITTEN),
      'The bench is unchanged. What is wrong with the link:',
    );
  }

  /** While the study is shown, the bench rests. */
  #showBench(shown: boolean): void {
    this.#stopFrames?.();
    const sinks = {
      ingest: (frame: Frame, draws: boolean) => this.#ingest(frame, draws),
      draw: (now: Float64Array, seldom: boolean) => this.view.draw(now, seldom),
      drawsSeldom: () => isJobUnderWay() && isDialogOpen() && this.view.mayDrawSeldom,
    };
    this.#stopFrames = shown ? startFrameLoop(this.run.frames, sinks) : null;
    if (shown) this.view.resize();
    else {
      this.view.stopFilm();
      if (this.run.isRunning) this.run.runOrPause();
    }
  }
}

import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { SweptChips } from '../../shared/core/sweptChips.ts';
import { CUTAWAYS, type LessonStep, type StepView } from '../../shared/lesson/lesson.ts';
import { cycleTime } from '../../shared/motion/cycle.ts';
import type { MeasuredLoop } from '../../shared/protocol/analysis.ts';
import type { AxisStatus, Frame } from '../../shared/protocol/axis.ts';
import type { Bench } from '../bench/bench.ts';
import { presentScene } from '../bench/bench.ts';
import { sameSituation } from '../bench/workerSync.ts';
import { ChartBar, FIRST_PRESENTED } from '../charts/chartBar.ts';
import { createCharts } from '../charts/charts.ts';
import { ROWS } from '../charts/rows.ts';
import { windowFor } from '../charts/windows.ts';
import { Comparison } from '../compare/comparison.ts';
import { Gauges } from '../gauges/gauges.ts';
import { History } from '../history/history.ts';
import { recordingRows } from '../history/recordingRows.ts';
import type { LoopAnalyst } from '../loop/loopView.ts';
import type { Cutaway } from '../stage/cutawayMode.ts';
import type { FieldPane } from '../stage/field/fieldPane.ts';
import type { FilmPane } from '../stage/film/filmPane.ts';
import { stageLine } from '../stage/film/stageLine.ts';
import { SoundPane } from '../stage/sound/soundPane.ts';
import { createStage } from '../stage/stage.ts';
import type { CaptionLine } from '../stage/still.ts';
import { TripBanner } from '../stage/tripBanner.ts';
import { button, byId, element } from '../ui/dom.ts';
import { keyOf } from '../ui/keys.ts';
import { createSegmented } from '../ui/segmented.ts';
import type { Theme } from '../ui/theme.ts';
import { NumberClock } from '../ui/timing/numberClock.ts';
import { LowerArea } from './lowerArea.ts';

interface ViewOptions {
  onHand(position: number | null): void;
  onFreeze(): void;
  onFigures(): void;
  onPin(): void;
  onDifferences(): void;
  onReset(): void;
  onUndo(): void;
  /** Sets parameters from a plot if they are legal; returns what is wrong, or null. */
  onShape(changes: ParameterChanges, text: string, gesture: string | null): string | null;
  onVideo(video: Blob, ending: string): void;
  /** For a screen reader. */
  say(text: string): void;
  readonly analyst: LoopAnalyst;
  /** Does what needs a part of the page that is loaded only then. */
  withPart(name: string, work: () => Promise<unknown>): void;
}

/** Everything that shows the run: the stage with its trip banner, the gauges, the charts with the figures above them. */
export class View {
  readonly comparison: Comparison;
  readonly #history = new History();
  readonly #stageHost = byId('stage');
  readonly #stage;
  readonly #charts;
  readonly #gauges;
  readonly #bar;
  readonly #trip;
  readonly #options: ViewOptions;
  #field: FieldPane | null = null;
  #film: FilmPane | null = null;
  readonly #sound = new SoundPane();
  readonly #cutaway;
  readonly #lower;
  #paused = true;
  #bench: Bench;
  #run = -1;
  #chips: SweptChips | null = null;
  #status: AxisStatus | null = null;
  #frozen = false;
  #beforeField: Cutaway = 'closed';
  readonly #numbers = new NumberClock();
  /** The values in the legends are written when a frame comes, all other numbers of it with the next refresh: all at once would hold the page up. */
  #numbersDue = false;
  /** Puts back what a lesson has set; null outside one. */
  #endTeaching: (() => void) | null = null;

  constructor(bench: Bench, options: ViewOptions) {
    this.#bench = bench;
    this.#options = options;
    this.#stage = createStage(this.#stageHost, { onHand: options.onHand });
    this.#charts = createCharts(byId('charts'), this.#history);
    this.#gauges = new Gauges(byId('gauges'));
    this.#bar = new ChartBar({
      onPresent: (title) => this.#present(title),
      onWindow: (seconds) => this.#charts.setWindowSeconds(seconds),
      onFreeze: options.onFreeze,
      onFigures: options.onFigures,
      onPin: options.onPin,
      onDifferences: options.onDifferences,
    });
    this.comparison = new Comparison(presentScene(bench), {
      history: this.#history,
      onPinned: (ghost) => {
        this.#charts.setPinned(ghost);
        this.#bar.showPinned(ghost !== null);
        this.#lower.pin(ghost !== null);
      },
    });
    this.#lower = new LowerArea(bench, {
      analyst: options.analyst,
      motionTools: this.#bar.element,
      change: options.onShape,
      onResize: () => this.#charts.resize(),
    });
    this.#trip = new TripBanner(options.onReset, options.onUndo);
    this.#cutaway = createSegmented('Cut-away', CUTAWAYS, (mode) => this.#show(mode));
    this.#stageHost.append(
      this.#sound.element,
      element(
        'div',
        { class: 'stage-tools' },
        this.#cutaway.element,
        button('Reset view', () => this.resetView(), { keys: keyOf('resetView'), class: 'desk-only' }),
      ),
    );
    // Above the stage, where it covers nothing of the machine.
    byId('caption').append(this.#trip.element);
    this.#present(FIRST_PRESENTED);
    this.#stage.show(presentScene(bench));
    this.#charts.setParameters(bench.parameters);
    this.#suggestWindow(bench);
  }

  /** The chart that stays at the presenter size, and the gauge that belongs to it. */
  #present(title: string): void {
    this.#charts.present(title);
    const row = ROWS.find((each) => each.title === title);
    if (row) this.#gauges.present(row.traces[0].quantity);
  }

  show(bench: Bench): void {
    if (!sameSituation(bench, this.#bench)) {
      this.#stage.show(presentScene(bench));
      this.#suggestWindow(bench);
    }
    this.#bench = bench;
    this.comparison.setScene(presentScene(bench));
    this.#charts.setParameters(bench.parameters);
    this.#lower.show(bench);
  }

  /** A window that suits the program; what is tuned later leaves it alone. */
  #suggestWindow(bench: Bench): void {
    this.#bar.suggestWindow(windowFor(cycleTime(presentScene(bench))));
  }

  /** Takes in a frame; `draws`: and shows it. Returns what to say of a trip that has just come. */
  ingest(frame: Frame, draws: boolean): string | null {
    if (this.#run < 0) this.#stageHost.querySelector('.stage-word')?.remove();
    this.#run = frame.run;
    this.#history.ingest(frame);
    // First of all that shows the frame: text on a canvas needs the page laid out, as it still is before anything is written.
    if (draws) {
      const writes = this.#numbers.isDue();
      this.#numbersDue ||= writes;
      this.#drawCharts(writes);
    }
    this.#status = frame.status;
    this.#chips = frame.status.chips ?? null;
    this.#sound.follow(this.#history, this.#bench.parameters, frame.status.achievedTimeScale);
    this.comparison.take(frame.run, frame.status);
    this.#bar.showMove(frame.status.lastMove);
    return this.#trip.show(frame.status.trip);
  }

  offerUndo(possible: boolean): void {
    this.#trip.offerUndo(possible);
  }

  showState(state: AxisStatus['state']): void {
    this.#stage.setState(state);
    this.#paused = state !== 'running';
  }

  /** Where drawing is computed without a graphics card, or costs the display refreshes; a video is wanted whole. */
  get mayDrawSeldom(): boolean {
    return (this.#stage.pace?.isCostly ?? true) && !this.#film?.isRecording;
  }

  /** `seldom`: with few of the refreshes. */
  draw(now: Float64Array, seldom: boolean): void {
    if (this.#run < 0) return;
    const { parameters } = this.#bench;
    const writes = this.#numbersDue;
    this.#numbersDue = false;
    if (this.#film?.isRecording) this.#stage.redraw();
    this.#stage.pace?.setSeldom(seldom);
    const drawn = this.#stage.draw(now, this.#history, parameters, this.#chips, writes);
    this.#field?.draw(now, this.#bench.origin.driveType, parameters);
    if (drawn) this.#film?.take();
    this.#drawCharts(false);
    if (this.#lower.shown === 'Loop') this.#lower.draw(now, this.#paused);
    this.#gauges.update(now, parameters, this.#history, writes);
  }

  #drawCharts(writes: boolean): void {
    if (this.#lower.shown === 'Loop') return;
    this.#charts.draw(writes);
    this.#bar.showWindow(this.#charts.windowSeconds);
  }

  /** Shows the bench as a step of a lesson wants it seen. */
  teach({ scene, view, pointAt }: LessonStep): void {
    this.#endTeaching ??= this.#keepLook();
    if (this.#frozen) this.toggleFrozen();
    this.#cutaway.choose(view.cutaway);
    this.#lower.choose(view.area === 'loop' ? 'Loop' : 'Motion');
    this.#charts.setWindowSeconds(view.window ?? windowFor(cycleTime(scene)));
    const titles = pointAt.flatMap((pointer) => ('chart' in pointer ? [pointer.chart] : []));
    this.#charts.showOnly(titles.length > 0 ? titles : null);
    this.#charts.followLive();
    this.#stage.look(view.camera);
    this.#stage.pointAtTable(pointAt.some((pointer) => 'stage' in pointer && pointer.stage === 'table'));
  }

  /** How the bench is seen now, as a step of a lesson. */
  get taught(): StepView {
    return {
      cutaway: this.#cutaway.value,
      area: this.#lower.shown === 'Loop' ? 'loop' : 'motion',
      window: this.#charts.windowSeconds,
      camera: this.#stage.glance,
    };
  }

  /** Shows the bench as a person had it before the lesson. */
  endTeaching(): void {
    this.#endTeaching?.();
    this.#endTeaching = null;
  }

  #keepLook(): () => void {
    const [cutaway, area, seconds] = [this.#cutaway.value, this.#lower.shown, this.#charts.windowSeconds];
    return () => {
      this.#cutaway.choose(cutaway);
      this.#lower.choose(area);
      this.#charts.setWindowSeconds(seconds);
      this.#charts.showOnly(null);
      this.#stage.look(null);
      this.#stage.pointAtTable(false);
    };
  }

  setTheme(theme: Theme): void {
    this.#stage.setTheme(theme);
    this.#field?.restyle();
    this.#charts.themeChanged();
    this.#lower.resize();
  }

  /** After a change of the page's layout or size of type. */
  resize(): void {
    this.#charts.resize();
    this.#lower.resize();
  }

  /** After a change of the units in which values are printed. */
  refresh(): void {
    this.#bar.refresh();
    this.resize();
  }

  /** Motion over time or the loop over frequency. */
  nextArea(): void {
    this.#lower.next();
  }

  enlargeArea(): void {
    this.#lower.enlarge();
  }

  nextCutaway(): void {
    this.#cutaway.next();
  }

  toggleSound(): void {
    this.#sound.toggle();
  }

  /** Opens the box for a video; stops one that is being recorded; closes the box. */
  toggleFilm(): void {
    if (this.#film) this.#film.toggle();
    else this.#options.withPart('The video of the stage', () => this.#loadFilm());
  }

  async #loadFilm(): Promise<void> {
    const { FilmPane } = await import('../stage/film/filmPane.ts');
    if (!this.#film) {
      const { onVideo, say } = this.#options;
      this.#film = new FilmPane({ host: this.#stageHost, line: () => this.#line, onVideo, say });
      this.#sound.element.after(this.#film.element);
    }
    this.#film.toggle();
  }

  /** Ends a video that is being recorded; what was recorded is saved. */
  stopFilm(): void {
    this.#film?.stop();
  }

  /** The cut-away with the field, or the one before it. */
  toggleField(): void {
    this.#cutaway.choose(this.isFieldShown ? this.#beforeField : 'field');
  }

  get isFieldShown(): boolean {
    return this.#cutaway.value === 'field';
  }

  #show(mode: Cutaway): void {
    if (mode !== 'field') this.#beforeField = mode;
    this.#stage.setCutaway(mode);
    if (this.isFieldShown && !this.#field)
      this.#options.withPart('The inside of the motor', () => this.#loadField());
    this.#field?.show(this.isFieldShown);
  }

  async #loadField(): Promise<void> {
    const { FieldPane } = await import('../stage/field/fieldPane.ts');
    if (!this.#field) {
      this.#field = new FieldPane(this.#options.onShape);
      this.#sound.element.before(this.#field.element);
    }
    this.#field.show(this.isFieldShown);
  }

  resetView(): void {
    this.#stage.resetView();
  }

  toggleFrozen(): void {
    this.#frozen = !this.#frozen;
    this.#charts.setFrozen(this.#frozen);
    this.#bar.showFrozen(this.#frozen);
  }

  followLive(): void {
    if (this.#frozen) this.toggleFrozen();
    this.#charts.followLive();
  }

  /** Shows the loop with the points of a measured response over it. */
  layResponse(loop: MeasuredLoop): Promise<void> {
    return this.#lower.layResponse(loop);
  }

  /** What was recorded in the time that the charts show, as lines of a table; null before there is anything. */
  recordingRows(): string[][] | null {
    const { span } = this.#charts;
    return span && recordingRows(this.#history, ...span);
  }

  get #line(): CaptionLine {
    return stageLine(this.#bench, this.#status);
  }

  /** The charts as they are drawn now, as a PNG data URL. */
  chartPicture(): string {
    return this.#charts.picture();
  }

  /** The stage as it is seen now, as a PNG data URL. */
  async picture(): Promise<string> {
    const { CaptionedStill } = await import('../stage/still.ts');
    this.#stage.drawStill();
    const { width, height } = CaptionedStill.sizeOf(this.#stageHost);
    const still = new CaptionedStill({ width: 2 * width, height: 2 * height });
    still.take(this.#stageHost, this.#line);
    return still.canvas.toDataURL('image/png');
  }
}

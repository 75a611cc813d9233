import type { Parameters } from '../../shared/core/parameters/table.ts';
import { type LessonStep, PACES } from '../../shared/lesson/lesson.ts';
import type { Recording } from '../../shared/lesson/recordedStep.ts';
import { type LoopFigures, startingPoint } from '../../shared/protocol/analysis.ts';
import type { TuningSession } from '../../shared/protocol/axis.ts';
import type { AxisRun, ReplayWatcher } from '../bench/axisRun.ts';
import { benchOf } from '../bench/bench.ts';
import type { Store } from '../bench/store.ts';
import type { AnalysisClient } from '../clients/analysisClient.ts';
import type { LessonBench } from '../lessons/lessonBench.ts';
import { byId } from '../ui/dom.ts';
import type { View } from './view.ts';

interface BenchParts {
  readonly store: Store;
  readonly run: AxisRun;
  readonly view: View;
  readonly analysis: AnalysisClient;
}

/** The bench as lessons use it: what a person had set is kept aside, with its undo, and comes back as it was. */
export class BenchForLessons implements LessonBench {
  readonly #parts: BenchParts;
  /** Null while no lesson has the bench. */
  #bringBack: (() => void) | null = null;

  constructor(parts: BenchParts) {
    this.#parts = parts;
  }

  set(step: LessonStep): void {
    const { store, run, view } = this.#parts;
    const bench = benchOf(step.scene);
    if (this.#bringBack) store.replace(bench, step.title);
    else {
      const [bringBack, timeScale] = [store.borrow(bench), run.status?.timeScale ?? 1];
      this.#bringBack = () => {
        bringBack();
        run.setTimeScale(timeScale);
      };
    }
    run.rest();
    const pointsAtGauge = step.pointAt.some((pointer) => 'gauge' in pointer);
    byId('bench').classList.toggle('points-at-gauge', pointsAtGauge);
    view.teach(step);
  }

  play(session: TuningSession, pace: number, watcher: ReplayWatcher): void {
    const { run } = this.#parts;
    run.setTimeScale(pace);
    run.play(session, watcher);
  }

  hurry(): void {
    this.#parts.run.setTimeScale(Number.POSITIVE_INFINITY);
  }

  async loopFigures(parameters: Parameters): Promise<LoopFigures> {
    const point = { ...startingPoint(parameters), friction: 'sliding' as const };
    return (await this.#parts.analysis.analyse(parameters, point)).figures;
  }

  rest(): void {
    this.#parts.run.rest();
  }

  async recording(): Promise<Recording> {
    const { store, run, view } = this.#parts;
    const session = await run.recording();
    // The simulation does not know that the project was named since.
    const { id, title } = store.bench.origin;
    const [slowest, fastest] = PACES;
    return {
      session: { ...session, scene: { ...session.scene, id, title } },
      view: view.taught,
      pace: Math.min(Math.max(run.status?.timeScale ?? 1, slowest), fastest),
    };
  }

  giveBack(): void {
    const { run, view } = this.#parts;
    this.#bringBack?.();
    this.#bringBack = null;
    run.rest();
    byId('bench').classList.remove('points-at-gauge');
    view.endTeaching();
  }
}

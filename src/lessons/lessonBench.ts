import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { LessonStep } from '../../shared/lesson/lesson.ts';
import type { LoopFigures } from '../../shared/protocol/analysis.ts';
import type { TuningSession } from '../../shared/protocol/axis.ts';
import type { ReplayWatcher } from '../bench/axisRun.ts';
import type { RecordedBench } from './record/lessonRecorder.ts';

/** The bench as lessons use it. What was on it before a lesson is kept aside until it is given back. */
export interface LessonBench extends RecordedBench {
  /** Puts a step on the bench, at rest at its start. */
  set(step: LessonStep): void;
  /** `pace` in simulated seconds per second. */
  play(session: TuningSession, pace: number, watcher: ReplayWatcher): void;
  /** The rest of the run as fast as it goes. */
  hurry(): void;
  /** Of the loop with the guide sliding. @throws when it cannot be analysed */
  loopFigures(parameters: Parameters): Promise<LoopFigures>;
  /** Everything as it was before the lesson. */
  giveBack(): void;
}

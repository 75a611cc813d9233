import type { Measured } from '../../../shared/lesson/claim.ts';
import type { Lesson, LessonStep } from '../../../shared/lesson/lesson.ts';
import { RunMeter } from '../../../shared/lesson/runMeter.ts';
import { stepSession } from '../../../shared/lesson/stepSession.ts';
import { type LoopFigures, startingPoint } from '../../../shared/protocol/analysis.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { Session } from '../../../workers/run/session.ts';

/** Every figure of a lesson, as its steps measure them one after another, without a page. */
export function runLesson(lesson: Lesson): Measured {
  return new Map(lesson.steps.flatMap((step) => [...runStep(step)]));
}

function runStep(step: LessonStep): Measured {
  const meter = new RunMeter(step.measures);
  if (step.run) {
    const session = Session.replay(stepSession(step, step.run));
    do {
      while (session.canStep) session.step();
      const { bins, count } = session.recorder.hand(null);
      meter.take({ bins, count, status: { finished: session.takeFinished(), trip: session.axis.trip } });
    } while (!session.ended);
  }
  return meter.values(step.measures.some(({ source }) => source.kind === 'loop') ? loopOf(step) : null);
}

function loopOf({ scene: { parameters } }: LessonStep): LoopFigures {
  return analyse(parameters, { ...startingPoint(parameters), friction: 'sliding' }).figures;
}

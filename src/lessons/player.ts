import { at } from '../../shared/core/at.ts';
import type { Measured } from '../../shared/lesson/claim.ts';
import type { Lesson, LessonStep } from '../../shared/lesson/lesson.ts';
import { RunMeter } from '../../shared/lesson/runMeter.ts';
import { stepSession } from '../../shared/lesson/stepSession.ts';
import type { LessonBench } from './lessonBench.ts';

/** A step waits for the class to predict, runs, or shows its answer. */
export type Phase = 'asked' | 'running' | 'answered';

/** Where a lesson stands, and what on and back do. It knows the bench, but not how the lesson is shown. */
export class LessonPlayer {
  readonly lesson: Lesson;
  readonly #bench: LessonBench;
  readonly #onChange: () => void;
  readonly #measured = new Map<string, number | null>();
  /** By the index of the step. */
  readonly #chosen = new Map<number, number>();
  readonly #answered = new Set<number>();
  #index = 0;
  #phase: Phase = 'asked';
  /** Counts runs and steps, so that what comes late from an earlier one is known as such. */
  #turn = 0;

  constructor(lesson: Lesson, bench: LessonBench, onChange: () => void) {
    this.lesson = lesson;
    this.#bench = bench;
    this.#onChange = onChange;
  }

  get index(): number {
    return this.#index;
  }

  get step(): LessonStep {
    return at(this.lesson.steps, this.#index);
  }

  get phase(): Phase {
    return this.#phase;
  }

  /** What the class predicts, as an index of the answers; null: nothing yet. */
  get chosen(): number | null {
    return this.#chosen.get(this.#index) ?? null;
  }

  get measured(): Measured {
    return this.#measured;
  }

  get isAtEnd(): boolean {
    return this.#phase === 'answered' && this.#index === this.lesson.steps.length - 1;
  }

  /** Puts a step on the bench; beyond the lesson: the nearest there is. */
  go(index: number): void {
    this.#turn++;
    this.#index = Math.min(Math.max(index, 0), this.lesson.steps.length - 1);
    this.#phase = 'asked';
    this.#bench.set(this.step);
    this.#onChange();
  }

  choose(answer: number): void {
    if (this.#phase !== 'asked' || !this.step.question?.answers[answer]) return;
    this.#chosen.set(this.#index, answer);
    this.#onChange();
  }

  /** Runs the step, then shows its answer, then the next step; a run under way is hurried to its end. */
  next(): void {
    if (this.#phase === 'asked') this.#run();
    else if (this.#phase === 'running') this.#bench.hurry();
    else if (!this.isAtEnd) this.go(this.#index + 1);
  }

  /** The same step from its start, or the step before with the answer that it had. */
  back(): void {
    if (this.#phase !== 'asked') {
      this.go(this.#index);
      return;
    }
    if (this.#index === 0) return;
    this.go(this.#index - 1);
    if (this.#answered.has(this.#index)) this.#enter('answered');
  }

  #run(): void {
    const { step } = this;
    const turn = ++this.#turn;
    if (!step.run) {
      this.#answer();
      return;
    }
    const meter = new RunMeter(step.measures);
    this.#enter('running');
    this.#bench.play(stepSession(step, step.run), step.run.pace, {
      take: (frame) => meter.take(frame),
      ended: (how) => {
        if (turn !== this.#turn) return;
        if (how === 'left') this.#enter('asked');
        else void this.#measure(step, meter, turn);
      },
    });
  }

  async #measure(step: LessonStep, meter: RunMeter, turn: number): Promise<void> {
    const asksForLoop = step.measures.some(({ source }) => source.kind === 'loop');
    const loop = asksForLoop ? await this.#bench.loopFigures(step.scene.parameters).catch(() => null) : null;
    if (turn !== this.#turn) return;
    for (const [id, value] of meter.values(loop)) this.#measured.set(id, value);
    this.#answer();
  }

  #answer(): void {
    this.#answered.add(this.#index);
    this.#enter('answered');
  }

  #enter(phase: Phase): void {
    this.#phase = phase;
    this.#onChange();
  }
}

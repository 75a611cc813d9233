import {
  type ParameterChanges,
  type ParameterName,
  type Parameters,
  parameterRow,
} from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { AxisEvent, Engine, MoveFigures, TuningSession } from '../../shared/protocol/axis.ts';
import { ENGINES } from '../solver/engine.ts';
import { Axis } from './axis.ts';
import { MoveMeter } from './moveMeter.ts';
import { Recorder } from './recorder.ts';

/** Bins the recorder holds before the run must wait for a reader: a third of a second at eight times real time. */
const RECORDER_BINS = 8192;

type Input =
  | { kind: 'change'; changes: ParameterChanges }
  | { kind: 'hand'; position: number | null }
  | { kind: 'engine'; engine: Engine };

/** True when one of the changes alters the structure of the model, so that a new run has to begin. */
function needsRestart(changes: ParameterChanges): boolean {
  return Object.keys(changes).some((name) => parameterRow(name as ParameterName).restart);
}

/**
 * A run of one scene with everything that a person does to it. Inputs wait for the next position-loop sample and are noted with
 * their tick, so the run can be repeated exactly. Pure: it knows nothing of clocks, pages or frames.
 */
export class Session {
  readonly recorder = new Recorder(RECORDER_BINS);
  axis: Axis;
  meter: MoveMeter;
  /** Counts restarts: everything recorded under an earlier number belongs to another run. */
  run = 1;

  #scene: Scene;
  /** What runs are started with, and what the present one was started with. */
  #engine: Engine = 'odex';
  #firstEngine: Engine = 'odex';
  #waiting: Input[] = [];
  #events: AxisEvent[] = [];
  /** What a replay still has to do, in the order of its ticks. */
  #script: AxisEvent[] = [];
  #lastTick = Number.POSITIVE_INFINITY;
  #finished: MoveFigures[] = [];

  constructor(scene: Scene) {
    this.#scene = scene;
    this.axis = new Axis(scene);
    this.meter = new MoveMeter(scene.parameters.start);
  }

  /** Repeats a recorded session from its start; `ended` says when it is through. */
  static replay(session: TuningSession): Session {
    const copy = new Session(session.scene);
    copy.replay(session);
    return copy;
  }

  /** Back to the start of the scene as it is set now. */
  reset(): void {
    this.load({ ...this.#scene, parameters: this.#wanted });
  }

  /** The parameters with all changes that wait. */
  get #wanted(): Parameters {
    const changes = this.#waiting.flatMap((input) => (input.kind === 'change' ? [input.changes] : []));
    return Object.assign({}, this.axis.parameters, ...changes);
  }

  load(scene: Scene): void {
    this.#start({ scene, engine: this.#engine, events: [], ticks: Number.POSITIVE_INFINITY });
  }

  replay(session: TuningSession): void {
    this.#start(session);
  }

  /**
   * Checked changes; they take effect at the next position-loop sample, or restart the run if one needs it. Before the first tick
   * they change the scene itself, so that a new start position is where the table stands.
   */
  change(changes: ParameterChanges): void {
    this.#waiting.push({ kind: 'change', changes });
    if (this.axis.tick > 0 && !needsRestart(changes)) return;
    const hands = this.#waiting.filter(({ kind }) => kind === 'hand');
    this.reset();
    this.#waiting = hands;
  }

  /** What integrates the plant from the next position-loop sample on, and later runs. A replay keeps to what it was recorded with. */
  useEngine(engine: Engine): void {
    this.#engine = engine;
    if (this.#lastTick === Number.POSITIVE_INFINITY) this.#waiting.push({ kind: 'engine', engine });
  }

  hand(position: number | null): void {
    this.#waiting.push({ kind: 'hand', position });
  }

  /** The run can go on: not tripped, not at the end of a replay, and there is room to record. */
  get canStep(): boolean {
    return !this.axis.trip && this.axis.tick < this.#lastTick && !this.recorder.full;
  }

  get ended(): boolean {
    return (
      this.axis.tick >= this.#lastTick ||
      (this.#lastTick < Number.POSITIVE_INFINITY && this.axis.trip !== null)
    );
  }

  /** One current-loop period. */
  step(): void {
    const { axis, recorder } = this;
    const samples = axis.atPositionSample;
    if (samples) {
      recorder.closeBin();
      this.#applyInputs();
    }
    if (!axis.step()) return;
    recorder.take(axis.record);
    if (samples) this.#measure();
    this.meter.period(axis.effort);
  }

  /** Hands out the moves that have finished since the last time, oldest first. */
  takeFinished(): readonly MoveFigures[] {
    const finished = this.#finished;
    this.#finished = [];
    return finished;
  }

  recording(): TuningSession {
    const { tick, trip } = this.axis;
    // The period in which the drive tripped belongs to the session; what was set since then comes after it.
    const ticks = trip ? tick + 1 : tick;
    const waiting = this.#waiting.map((input): AxisEvent => ({ tick: ticks, ...input }));
    const engine = this.#firstEngine;
    return { scene: this.#scene, engine, events: [...this.#events, ...waiting], ticks };
  }

  #start({ scene, engine = 'odex', events, ticks }: TuningSession): void {
    this.#scene = scene;
    this.#firstEngine = engine;
    this.axis = new Axis(scene, { solver: ENGINES[engine] });
    this.meter = new MoveMeter(scene.parameters.start);
    this.recorder.clear();
    this.#finished = [];
    this.#waiting = [];
    this.#events = [];
    this.#script = [...events];
    this.#lastTick = ticks;
    this.run++;
  }

  #measure(): void {
    const { meter } = this;
    const { record, command, audit, parameters } = this.axis;
    const { count } = meter;
    meter.sample(record, command, parameters.window, audit.copper);
    if (meter.last && meter.count > count) this.#finished.push(meter.last);
  }

  #applyInputs(): void {
    const { tick } = this.axis;
    for (let next = this.#script[0]; next && next.tick <= tick; next = this.#script[0]) {
      this.#script.shift();
      this.#apply(next);
    }
    if (this.#waiting.length === 0) return;
    for (const input of this.#waiting) this.#apply({ tick, ...input });
    this.#waiting = [];
  }

  #apply(event: AxisEvent): void {
    this.#do(event);
    this.#events.push(event);
  }

  #do(event: AxisEvent): void {
    switch (event.kind) {
      case 'change':
        this.axis.change(event.changes);
        break;
      case 'hand':
        this.axis.hand(event.position);
        break;
      case 'engine':
        this.axis.useEngine(event.engine);
        break;
    }
  }
}

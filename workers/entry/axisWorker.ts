import { CHANNEL_COUNT } from '../../shared/core/channels.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type {
  AxisCommands,
  AxisStatus,
  Engine,
  Frame,
  FrameRequest,
  Goal,
  TuningSession,
} from '../../shared/protocol/axis.ts';
import { EventWatch } from '../run/eventWatch.ts';
import { Session } from '../run/session.ts';
import { type Paced, Pacer } from './pacer.ts';
import { serve } from './serve.ts';

/** Rest between two looks at the clock while the run is on time, ms. */
const REST = 3;

/**
 * The simulation worker: commands in through comlink, frames out through a raw port, one for each request of the page. Between messages
 * it pumps the pacer: on time it rests on a timer, behind time a message posted to itself yields to the queue at once.
 */
class AxisWorker implements AxisCommands<MessagePort>, Paced {
  #session: Session | null = null;
  readonly #pacer = new Pacer();
  readonly #beat = new MessageChannel();
  #running = false;
  #beating = false;
  #watch: EventWatch | null = null;
  /** A led run has come to an event that whoever leads it has not been told of. */
  #isUntold = false;
  #moveToFinish = Number.POSITIVE_INFINITY;

  constructor() {
    this.#beat.port1.onmessage = () => this.#onBeat();
  }

  /** The scene is loaded before anything else is asked for. */
  get session(): Session {
    if (!this.#session) throw new Error('No scene has been loaded.');
    return this.#session;
  }

  load(scene: Scene): void {
    this.#running = false;
    if (this.#session) this.#session.load(scene);
    else this.#session = new Session(scene);
  }

  run(): void {
    this.#go(Number.POSITIVE_INFINITY);
  }

  runOneMove(): void {
    this.#go(this.session.meter.count + 1);
  }

  pause(): void {
    this.#running = false;
  }

  setTimeScale(timeScale: number): void {
    this.#pacer.timeScale = timeScale;
    this.#pacer.start(performance.now());
  }

  setSlowMotion(on: boolean): void {
    this.#watch = on ? new EventWatch() : null;
  }

  stepTick(): void {
    this.#running = false;
    if (this.session.canStep) this.session.step();
  }

  reset(): void {
    this.session.reset();
    // A goal held for the run before.
    if (this.#pacer.until !== null) this.#running = false;
  }

  change(changes: ParameterChanges): void {
    this.session.change(changes);
  }

  hand(position: number | null): void {
    this.session.hand(position);
  }

  useEngine(engine: Engine): void {
    this.session.useEngine(engine);
    // What was lost before says nothing of the other engine.
    this.#pacer.lost = 0;
  }

  connect(frames: MessagePort): void {
    frames.onmessage = ({ data }: MessageEvent<FrameRequest>) => {
      if (data.goal) this.#follow(data.goal);
      const frame = this.#frame(data);
      frames.postMessage(frame, [frame.bins.buffer, frame.now.buffer]);
    };
  }

  recording(): TuningSession {
    return this.session.recording();
  }

  replay(session: TuningSession): void {
    this.session.replay(session);
    this.#go(Number.POSITIVE_INFINITY);
  }

  mayStep(): boolean {
    return this.session.canStep && this.session.meter.count < this.#moveToFinish;
  }

  isEventful(): boolean {
    const { axis } = this.session;
    return this.#watch?.isNear(axis.record, axis.parameters.followingErrorLimit) ?? false;
  }

  #go(untilMove: number): void {
    this.#moveToFinish = untilMove;
    this.#running = true;
    this.#pacer.start(performance.now());
    if (!this.#beating) this.#nextBeat(true);
  }

  #follow({ run, time }: Goal): void {
    if (run !== this.session.run) return;
    this.#moveToFinish = Number.POSITIVE_INFINITY;
    this.#pacer.until = this.#isUntold ? this.session.axis.time : time;
    this.#running = true;
    if (!this.#beating) this.#nextBeat(true);
  }

  #nextBeat(behind: boolean): void {
    this.#beating = true;
    if (behind) this.#beat.port2.postMessage(null);
    else setTimeout(() => this.#onBeat(), REST);
  }

  #onBeat(): void {
    this.#beating = false;
    if (!this.#running) return;
    const behind = this.#pump();
    if (!this.#running) return;
    // Led, there is nothing to wait for but the next request.
    const led = this.#pacer.until !== null;
    if (!led || (behind && this.mayStep())) this.#nextBeat(behind);
  }

  #pump(): boolean {
    const wasSlow = this.#pacer.isSlow;
    const behind = this.#pacer.pump(this, () => performance.now());
    if (this.#pacer.isSlow && !wasSlow && this.#pacer.until !== null) {
      this.#isUntold = true;
      this.#pacer.until = this.session.axis.time;
    }
    const { session } = this;
    if (session.axis.trip || session.ended || session.meter.count >= this.#moveToFinish)
      this.#running = false;
    return behind;
  }

  #frame(request: FrameRequest): Frame {
    if (this.#running) this.#pump();
    const { session } = this;
    const { bins, count } = session.recorder.hand(request.bins);
    const now = request.now?.length === CHANNEL_COUNT ? request.now : new Float64Array(CHANNEL_COUNT);
    now.set(session.axis.record);
    this.#isUntold = false;
    return { run: session.run, bins, count, now, status: this.#status() };
  }

  #status(): AxisStatus {
    const { axis, meter } = this.session;
    const { chips } = axis;
    return {
      ...(chips && { chips }),
      state: axis.trip ? 'tripped' : this.#running ? 'running' : 'paused',
      time: axis.time,
      tick: axis.tick,
      timeScale: this.#pacer.timeScale,
      achievedTimeScale: this.#pacer.achieved,
      lostTime: this.#pacer.lost,
      isSlow: this.#pacer.isSlow,
      trip: axis.trip,
      engine: axis.engine,
      notices: axis.notices,
      energyResidual: axis.audit.relativeResidual,
      lastMove: meter.last,
      finished: this.session.takeFinished(),
      moveStart: meter.presentStart,
    };
  }
}

serve(new AxisWorker());

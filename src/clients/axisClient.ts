import { transfer } from 'comlink';
import type { Scene } from '../../shared/core/scene.ts';
import type {
  AxisCommands,
  Engine,
  Frame,
  FrameRequest,
  Goal,
  TuningSession,
} from '../../shared/protocol/axis.ts';
import { errorText } from './errorText.ts';
import { WorkerEnded, WorkerFailure, WorkerHost } from './workerHost.ts';

type Commands = AxisCommands<MessagePort>;

/** Commands without an answer; what goes wrong in the worker is reported to `onError`. */
type PlainCommand = Exclude<keyof Commands, 'recording' | 'connect'>;

/** The simulation as the page sees it: commands in, frames out. Nothing else on the page knows that it is a worker. */
export class AxisClient {
  readonly #worker = new WorkerHost<Commands>('The simulation', spawn);
  readonly #onError: (reason: string) => void;
  /** Hears that a frame has come, which `take` hands out. */
  onFrame: (() => void) | null = null;
  #port: MessagePort | null = null;
  #arrived: Frame | null = null;
  /** Takes the frame that was asked for and has not come yet. */
  #deliver: (() => void) | null = null;
  #hasFailed = false;
  /** The failure that was reported last. */
  #failure: WorkerFailure | null = null;
  #timeScale: number | null = null;
  #slowMotion = false;
  #engine: Engine | null = null;
  /** Runs are counted on across a restart, since the history tells one from another by their number. */
  #runsBefore = 0;
  #lastRun = 0;

  /** Starts the simulation of a scene, paused. `onError` hears why it cannot go on. */
  constructor(scene: Scene, onError: (reason: string) => void) {
    this.#onError = onError;
    this.#start(scene);
  }

  /** Sends a command. After a failure nothing is sent any more until `restart`. */
  send<Name extends PlainCommand>(name: Name, ...values: Parameters<Commands[Name]>): void {
    if (name === 'setTimeScale') [this.#timeScale] = values as [number];
    if (name === 'setSlowMotion') [this.#slowMotion] = values as [boolean];
    if (name === 'useEngine') [this.#engine] = values as [Engine];
    if (this.#hasFailed) return;
    this.#watch(
      this.#worker.ask((commands) => (commands[name] as (...values: unknown[]) => Promise<void>)(...values)),
    );
  }

  /** @throws when the simulation has stopped */
  async recording(): Promise<TuningSession> {
    if (this.#hasFailed) throw new Error('The simulation has stopped.');
    return this.#worker.ask((commands) => commands.recording());
  }

  /** The frame that came since the last call, or null. Its buffers go back with `ask`. */
  take(): Frame | null {
    const frame = this.#arrived;
    this.#arrived = null;
    return frame;
  }

  /**
   * Asks for the next frame, unless one is on its way, and hands back the buffers of a spent one. A goal leads the run;
   * without one it goes by its own clock.
   */
  ask(spent: Frame | null, goal: Goal | null = null): void {
    const port = this.#port;
    if (this.#hasFailed || this.#deliver || !port) return;
    const request: FrameRequest = {
      bins: spent?.bins ?? null,
      now: spent?.now ?? null,
      goal: goal && { ...goal, run: goal.run - this.#runsBefore },
    };
    this.#watch(
      this.#worker.ask(() => {
        port.postMessage(request, spent ? [spent.bins.buffer, spent.now.buffer] : []);
        return new Promise<void>((resolve) => {
          this.#deliver = resolve;
        });
      }),
    );
  }

  /** Starts the simulation of a scene afresh, paused, also after a failure. */
  restart(scene: Scene): void {
    this.terminate();
    this.#runsBefore = this.#lastRun + 1;
    this.#start(scene);
    if (this.#timeScale !== null) this.send('setTimeScale', this.#timeScale);
    if (this.#slowMotion) this.send('setSlowMotion', true);
    if (this.#engine) this.send('useEngine', this.#engine);
  }

  /** Ends the simulation. */
  terminate(): void {
    this.#worker.end();
    this.#port?.close();
    this.#port = null;
  }

  #start(scene: Scene): void {
    this.#hasFailed = false;
    this.#deliver = null;
    this.#arrived = null;
    // A frame can only be asked for once there is a scene.
    this.send('load', scene);
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<Frame>) => {
      this.#lastRun = data.run + this.#runsBefore;
      this.#arrived = { ...data, run: this.#lastRun };
      this.#deliver?.();
      this.#deliver = null;
      this.onFrame?.();
    };
    this.#port = port1;
    this.#watch(this.#worker.ask((commands) => commands.connect(transfer(port2, [port2]))));
  }

  #watch(answer: Promise<unknown>): void {
    answer.catch((error: unknown) => {
      // Every command under way hears of the same failure; it is reported once. A page that ends the worker knows it.
      if (error instanceof WorkerEnded || error === this.#failure) return;
      if (error instanceof WorkerFailure) {
        this.#hasFailed = true;
        this.#failure = error;
      }
      this.#onError(error instanceof WorkerFailure ? error.reason : errorText(error));
    });
  }
}

function spawn(): Worker {
  return new Worker(new URL('../../workers/entry/axisWorker.ts', import.meta.url), { type: 'module' });
}

import { type Remote, transfer, wrap } from 'comlink';
import type { Scene } from '../../shared/core/scene.ts';
import type { AxisCommands, Frame, FrameRequest, Goal, TuningSession } from '../../shared/protocol/axis.ts';

/** Commands that answer nothing; what goes wrong in the worker is reported to `onTrouble`. */
type Order = Exclude<keyof AxisCommands<MessagePort>, 'recording' | 'connect'>;

/** The simulation as the page sees it: orders in, frames out. Nothing else on the page knows that it is a worker. */
export class AxisClient {
  readonly #worker: Worker;
  readonly #commands: Remote<AxisCommands<MessagePort>>;
  readonly #port: MessagePort;
  readonly #onError: (message: string) => void;
  #arrived: Frame | null = null;
  #asked = false;

  /** Starts the simulation of a scene, paused. */
  constructor(scene: Scene, onError: (message: string) => void) {
    this.#onError = onError;
    const worker = new Worker(new URL('../../workers/entry/axisWorker.ts', import.meta.url), {
      type: 'module',
    });
    worker.onerror = (event) => {
      event.preventDefault();
      onError(event.message || 'its program could not be loaded');
    };
    this.#worker = worker;
    this.#commands = wrap<AxisCommands<MessagePort>>(worker);
    // A frame can only be asked for once there is a scene.
    this.order('load', scene);
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = ({ data }: MessageEvent<Frame>) => {
      this.#arrived = data;
      this.#asked = false;
    };
    this.#port = port1;
    this.#watch(this.#commands.connect(transfer(port2, [port2])));
  }

  order<K extends Order>(name: K, ...values: Parameters<AxisCommands<MessagePort>[K]>): void {
    const command = this.#commands[name] as (...values: unknown[]) => Promise<unknown>;
    this.#watch(command(...values));
  }

  recording(): Promise<TuningSession> {
    return this.#commands.recording();
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
    if (this.#asked) return;
    this.#asked = true;
    const request: FrameRequest = { bins: spent?.bins ?? null, now: spent?.now ?? null, goal };
    this.#port.postMessage(request, spent ? [spent.bins.buffer, spent.now.buffer] : []);
  }

  /** Ends the simulation for good. */
  terminate(): void {
    this.#worker.terminate();
    this.#port.close();
  }

  #watch(answer: Promise<unknown>): void {
    answer.catch((error: unknown) => this.#onError(error instanceof Error ? error.message : String(error)));
  }
}

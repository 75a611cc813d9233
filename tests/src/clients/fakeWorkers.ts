import { expose } from 'comlink';
import { vi } from 'vitest';

/** What stands in for the scripts of workers: their commands by the name of the script. */
type Scripts = Readonly<Record<string, () => object>>;

/** Stands in for the Worker of a browser: commands of the test answer on the other end of a channel. */
class FakeWorker extends EventTarget {
  readonly script: string;
  terminated = false;
  readonly #near: MessagePort;
  readonly #far: MessagePort;

  constructor(url: URL, scripts: Scripts) {
    super();
    this.script = /(\w+)\.ts/.exec(url.href)?.[1] ?? '';
    const { port1, port2 } = new MessageChannel();
    [this.#near, this.#far] = [port1, port2];
    this.#near.onmessage = ({ data }: MessageEvent) =>
      this.dispatchEvent(new MessageEvent('message', { data }));
    const commands = scripts[this.script];
    if (commands) expose(commands(), this.#far);
  }

  postMessage(message: unknown, transfer: Transferable[] = []): void {
    this.#near.postMessage(message, transfer);
  }

  terminate(): void {
    this.terminated = true;
    this.#near.close();
    this.#far.close();
  }

  /** As a browser tells it: without a message when the script could not be loaded. */
  fail(message?: string): void {
    this.dispatchEvent(Object.assign(new Event('error', { cancelable: true }), { message }));
  }

  sendUnreadable(): void {
    this.dispatchEvent(new Event('messageerror'));
  }
}

/** Replaces the Worker of the page; the workers that were started come in the order they were. */
export function fakeWorkers(scripts: Scripts = {}): FakeWorker[] {
  const started: FakeWorker[] = [];
  vi.stubGlobal(
    'Worker',
    class extends FakeWorker {
      constructor(url: URL) {
        super(url, scripts);
        started.push(this);
      }
    },
  );
  return started;
}

/** A command that is never done. */
export const never = () => new Promise<never>(() => {});

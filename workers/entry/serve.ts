import { expose } from 'comlink';
import { onSignOfLife } from '../../shared/core/signOfLife.ts';
import { type Heartbeat, isHeartbeat } from '../../shared/protocol/heartbeat.ts';

/** Between two messages of a long computation, ms. */
const INTERVAL = 200;

/**
 * What every worker does with its commands: it offers them to the page, and shows that it lives: once its script runs, whenever
 * it is asked between two computations, and by the signs that a computation gives.
 */
export function serve(commands: object): void {
  let last = 0;
  const tell = () => {
    last = performance.now();
    self.postMessage({ heartbeat: 'alive' } satisfies Heartbeat);
  };
  expose(commands);
  self.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
    if (isHeartbeat(data)) tell();
  });
  onSignOfLife(() => {
    if (performance.now() - last > INTERVAL) tell();
  });
  tell();
}

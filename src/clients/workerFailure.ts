/** Rejects when the program of a worker breaks, which its commands would never hear of; `what` names it in the message. */
export function workerFailure(worker: Worker, what: string): Promise<never> {
  const broken = new Promise<never>((_, reject) => {
    worker.onerror = (event) => {
      event.preventDefault();
      reject(new Error(`${what} stopped: ${event.message || 'its program could not be loaded'}`));
    };
  });
  // Whoever waits for an answer hears of it; nobody waiting is no fault.
  broken.catch(() => {});
  return broken;
}

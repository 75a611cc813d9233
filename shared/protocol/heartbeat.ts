/** Beside the commands of comlink, which pays no heed to messages without an id: whether the worker still lives. */
export interface Heartbeat {
  readonly heartbeat: 'asked' | 'alive';
}

export function isHeartbeat(message: unknown): message is Heartbeat {
  return typeof message === 'object' && message !== null && 'heartbeat' in message;
}

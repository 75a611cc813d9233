import { transfer } from 'comlink';

/** A result whose arrays are handed over to the page, not copied. */
export function handOver<Result>(result: Result): Result {
  return transfer(result, buffersOf(result));
}

function buffersOf(value: unknown): ArrayBuffer[] {
  if (value instanceof Float64Array) return [value.buffer as ArrayBuffer];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(buffersOf) : [];
}

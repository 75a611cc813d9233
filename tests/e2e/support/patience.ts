import { env } from 'node:process';
import { expect } from 'vitest';

/*
 * Page tests wait for conditions, and a busy machine may take its time over them. The limit only ends the wait for
 * what will never come: hundreds of times what a condition takes on a machine with nothing else to do. Once a test
 * has failed the run is lost, and the tests that are left need not wait as long for the same thing. Whoever is at work
 * on a test waits less: PATIENCE=20 (seconds).
 */
const LIMIT = 1000 * Number(env.PATIENCE ?? 600);
const LIMIT_AFTER_FAILURE = Math.min(LIMIT, 30_000);

let limit = LIMIT;

/** How long to wait for a condition, ms. */
export const patience = (): number => limit;

/** Called once a test has failed. */
export function losePatience(): void {
  limit = LIMIT_AFTER_FAILURE;
}

/** Reads until the expectation holds: `await eventually(() => clock(page)).toBe(0)`. */
export const eventually = <T>(read: () => T | Promise<T>) => expect.poll(read, { timeout: patience() });

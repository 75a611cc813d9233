import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { Watchdog } from '../../../src/clients/watchdog.ts';

/** How long the page was held up in all, ms. */
let heldUp = 0;

beforeEach(() => {
  vi.useFakeTimers();
  heldUp = 0;
  const now = performance.now.bind(performance);
  vi.spyOn(performance, 'now').mockImplementation(() => now() + heldUp);
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.useRealTimers();
});

/** A watchdog over a worker that answers as `answers` says. */
function watch(answers: () => boolean) {
  let [asked, alarms] = [0, 0];
  const watchdog: Watchdog = new Watchdog(
    () => {
      asked++;
      if (answers()) watchdog.heard();
    },
    () => alarms++,
  );
  watchdog.start();
  // What its script says first.
  if (answers()) watchdog.heard();
  return { watchdog, asked: () => asked, alarms: () => alarms };
}

/** The page is held up or asleep: the clock goes on, and only one look comes of it. */
function sleep(ms: number): void {
  heldUp += ms;
  vi.advanceTimersToNextTimer();
}

describe('the watchdog over a worker', () => {
  it('gives it up, once, within two seconds of silence', () => {
    let lives = true;
    const { alarms } = watch(() => lives);
    vi.advanceTimersByTime(60_000);
    expect(alarms()).toBe(0);
    lives = false;
    vi.advanceTimersByTime(2000);
    expect(alarms()).toBe(1);
    vi.advanceTimersByTime(60_000);
    expect(alarms()).toBe(1);
  });

  it('waits longer for a script that is on the way, but not without end', () => {
    const { alarms } = watch(() => false);
    vi.advanceTimersByTime(20_000);
    expect(alarms()).toBe(0);
    vi.advanceTimersByTime(20_000);
    expect(alarms()).toBe(1);
  });

  it('accuses nobody while the page is throttled, held up or asleep', () => {
    let lives = true;
    const { alarms } = watch(() => lives);
    lives = false;
    // A tab in the background looks once a second, after minutes once a minute; a night is one look.
    for (let k = 0; k < 100; k++) sleep(1000);
    for (let k = 0; k < 20; k++) sleep(60_000);
    sleep(36_000_000);
    expect(alarms()).toBe(0);
    vi.advanceTimersByTime(2000);
    expect(alarms()).toBe(1);
  });

  it('asks nothing of a worker whose answers come at once, as frames do, and sets no timer for each of them', () => {
    const { watchdog, asked } = watch(() => true);
    for (let frame = 0; frame < 1000; frame++) {
      watchdog.pause();
      vi.advanceTimersByTime(7);
      watchdog.start();
      vi.advanceTimersByTime(1);
      watchdog.heard();
      expect(vi.getTimerCount()).toBeLessThanOrEqual(1);
    }
    // It looks five times a second, of eight.
    expect(asked()).toBeLessThanOrEqual(40);
    watchdog.pause();
    vi.advanceTimersByTime(200);
    expect(vi.getTimerCount()).toBe(0);
  });

  it('expects nothing of a worker that owes nothing, and begins anew with the next answer that is due', () => {
    let lives = true;
    const { watchdog, alarms } = watch(() => lives);
    lives = false;
    vi.advanceTimersByTime(1400);
    watchdog.pause();
    vi.advanceTimersByTime(60_000);
    watchdog.start();
    vi.advanceTimersByTime(1400);
    expect(alarms()).toBe(0);
    vi.advanceTimersByTime(600);
    expect(alarms()).toBe(1);
  });
});

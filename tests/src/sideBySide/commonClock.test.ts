import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { CommonClock } from '../../../src/sideBySide/commonClock.ts';

const REFRESH = 1 / 60;

/** A candidate that simulates at most `speed` seconds per second, and answers a refresh later, as a worker does. */
class FakeCandidate {
  time = 0;
  begun = true;
  tripped = false;
  isSlow = false;
  private reached = 0;

  constructor(private readonly speed: number) {}

  /** What was reached by now arrives; then it goes on towards `goal`. */
  refresh(goal: number, elapsed: number): void {
    this.time = this.reached;
    if (!this.tripped)
      this.reached = Math.max(this.reached, Math.min(goal, this.reached + this.speed * elapsed));
  }

  reset(): void {
    this.time = this.reached = 0;
  }
}

function race(speeds: readonly number[]) {
  const clock = new CommonClock();
  const candidates = speeds.map((speed) => new FakeCandidate(speed));
  let spread = 0;
  return {
    clock,
    candidates,
    /** The furthest that the common time was ahead of the slowest candidate that goes on, s. */
    get spread() {
      return spread;
    },
    go(seconds: number, refresh = REFRESH) {
      for (let t = 0; t < seconds - refresh / 2; t += refresh) {
        clock.advance(refresh, candidates);
        for (const candidate of candidates) candidate.refresh(clock.time, refresh);
        const going = candidates.filter((candidate) => !candidate.tripped).map(({ time }) => time);
        if (going.length > 0) spread = Math.max(spread, clock.time - Math.min(...going));
      }
    },
  };
}

describe('the common clock', () => {
  it('keeps real time where every candidate can, and loses nothing', () => {
    const r = race([10, 14, 12, 17]);
    r.clock.run();
    r.go(5);
    expect(r.clock.time).toBeCloseTo(5, 9);
    expect(r.clock.achieved).toBeCloseTo(1, 9);
    expect(r.clock.lost).toBeCloseTo(0, 9);
    for (const { time } of r.candidates) expect(r.clock.time - time).toBeLessThanOrEqual(2 * REFRESH + 1e-9);
  });

  it('stands still before it is started, and while it is paused', () => {
    const r = race([10, 10]);
    r.go(1);
    expect(r.clock.time).toBe(0);
    r.clock.run();
    r.go(1);
    r.clock.pause();
    const { time } = r.clock;
    r.go(3);
    expect(r.clock.time).toBe(time);
    r.clock.run();
    r.go(1);
    expect(r.clock.time).toBeCloseTo(time + 1, 9);
    expect(r.clock.lost).toBeCloseTo(0, 9);
  });

  it('waits for all to have begun, and loses nothing by it; a simulation that failed is not waited for', () => {
    const r = race([10, 10, 10]);
    const late = at(r.candidates, 1);
    const failed = at(r.candidates, 2);
    late.begun = failed.begun = false;
    r.clock.run();
    r.go(2);
    expect(r.clock.time).toBe(0);
    failed.tripped = true;
    r.go(1);
    expect(r.clock.time).toBe(0);
    late.begun = true;
    r.go(1);
    expect(r.clock.time).toBeCloseTo(1, 9);
    expect(r.clock.lost).toBeCloseTo(0, 9);
  });

  it.each([0.001, 0.1, 2, 5])('goes %f times as fast as asked', (timeScale) => {
    const r = race([10, 10]);
    r.clock.setTimeScale(timeScale);
    r.clock.run();
    r.go(4);
    expect(r.clock.time).toBeCloseTo(4 * timeScale, 6);
    expect(r.clock.achieved).toBeCloseTo(timeScale, 6);
  });

  it('lets the slowest candidate set the pace for all, and says what pace and what is lost', () => {
    const r = race([10, 0.6, 10, 10]);
    r.clock.run();
    r.go(10);
    expect(r.clock.achieved).toBeCloseTo(0.6, 2);
    expect(Math.abs(r.clock.time - 6)).toBeLessThan(0.1);
    // Simulated and lost make up the whole of the wall clock.
    expect(r.clock.time + r.clock.lost).toBeCloseTo(10, 6);
    for (const { time } of r.candidates) expect(Math.abs(time - r.clock.time)).toBeLessThan(4 * REFRESH);
  });

  it('is never ahead of the slowest candidate by more than a few refreshes', () => {
    const r = race([10, 0.2]);
    r.clock.run();
    r.go(5);
    expect(r.spread).toBeLessThanOrEqual(4 * REFRESH);
    const slowDisplay = race([10, 0.2]);
    slowDisplay.clock.run();
    slowDisplay.go(5, 0.1);
    expect(slowDisplay.spread).toBeLessThanOrEqual(0.4);
  });

  it('waits for a candidate that stalls, and goes on with it', () => {
    const r = race([10, 10]);
    r.clock.run();
    r.go(1);
    const stalled = at(r.candidates, 1);
    const asked = stalled.refresh;
    stalled.refresh = () => {};
    r.go(2);
    expect(r.clock.time - stalled.time).toBeLessThanOrEqual(4 * REFRESH);
    expect(r.clock.achieved).toBeLessThan(0.05);
    stalled.refresh = asked;
    r.go(2);
    expect(r.clock.achieved).toBeGreaterThan(0.95);
    expect(Math.abs(r.clock.time - 3)).toBeLessThan(0.1);
  });

  it('goes on without a candidate that has tripped, and rests when all have', () => {
    const r = race([10, 10, 10]);
    r.clock.run();
    r.go(1);
    at(r.candidates, 0).tripped = true;
    const tripTime = at(r.candidates, 0).time;
    r.go(1);
    expect(r.clock.time).toBeCloseTo(2, 9);
    expect(at(r.candidates, 0).time).toBeLessThan(tripTime + 2 * REFRESH);
    for (const candidate of r.candidates) candidate.tripped = true;
    r.go(1);
    expect(r.clock.time).toBeCloseTo(2, 9);
  });

  it('catches up a short stall of the page and counts a long one as lost', () => {
    const r = race([10, 10]);
    r.clock.run();
    r.go(1);
    r.clock.advance(0.1, r.candidates);
    r.go(1);
    expect(r.clock.time).toBeCloseTo(2.1, 6);
    r.clock.advance(60, r.candidates);
    r.go(1);
    // No more than half a second is caught up with.
    expect(r.clock.time).toBeLessThan(2.1 + 0.5 + 1 + 1e-9);
    expect(r.clock.time + r.clock.lost).toBeCloseTo(1 + 0.1 + 1 + 60 + 1, 6);
  });

  it('goes as fast as the slowest candidate when asked to, and loses nothing by it', () => {
    const r = race([14, 6, 10, 17]);
    r.clock.setTimeScale(Number.POSITIVE_INFINITY);
    r.clock.run();
    r.go(10);
    expect(Math.abs(r.clock.achieved - 6)).toBeLessThan(0.3);
    expect(r.clock.lost).toBe(0);
  });

  it('goes at 1/20 while a candidate waits at an event, from where that one is', () => {
    const r = race([10, 10]);
    r.clock.run();
    r.go(1);
    const eventful = at(r.candidates, 1);
    // It has stopped short of the time that it might have reached.
    const from = eventful.time - 0.03;
    for (const candidate of r.candidates) Object.assign(candidate, { reached: from, time: from });
    eventful.isSlow = true;
    r.go(REFRESH);
    expect(r.clock.time).toBeLessThan(from + 0.005);
    r.go(2 - REFRESH);
    expect(r.clock.time).toBeGreaterThan(from + 0.095);
    expect(r.clock.time).toBeLessThan(from + 0.105);
    expect(r.clock.lost).toBe(0);
    eventful.isSlow = false;
    r.go(1);
    expect(Math.abs(r.clock.time - (from + 1.1))).toBeLessThan(0.01);
  });

  it('begins anew with a reset and goes on running', () => {
    const r = race([10, 10]);
    r.clock.run();
    r.go(3);
    r.clock.reset();
    for (const candidate of r.candidates) candidate.reset();
    r.go(1);
    expect(r.clock.time).toBeCloseTo(1, 9);
  });

  it('has nothing to do without candidates', () => {
    const r = race([]);
    r.clock.run();
    r.go(1);
    expect(r.clock.time).toBe(0);
  });
});

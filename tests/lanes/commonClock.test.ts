import { describe, expect, it } from 'vitest';
import { CommonClock } from '../../src/lanes/commonClock.ts';

const REFRESH = 1 / 60;

/** A lane that simulates at most `speed` seconds per second, and answers a refresh later, as a worker does. */
class FakeLane {
  time = 0;
  tripped = false;
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
  const lanes = speeds.map((speed) => new FakeLane(speed));
  let spread = 0;
  return {
    clock,
    lanes,
    /** The furthest that the common time was ahead of the slowest lane that goes on, s. */
    get spread() {
      return spread;
    },
    go(seconds: number, refresh = REFRESH) {
      for (let t = 0; t < seconds - refresh / 2; t += refresh) {
        clock.advance(refresh, lanes);
        for (const lane of lanes) lane.refresh(clock.time, refresh);
        const going = lanes.filter((lane) => !lane.tripped).map(({ time }) => time);
        if (going.length > 0) spread = Math.max(spread, clock.time - Math.min(...going));
      }
    },
  };
}

describe('the common clock', () => {
  it('keeps real time where every lane can, and loses nothing', () => {
    const r = race([10, 14, 12, 17]);
    r.clock.run();
    r.go(5);
    expect(r.clock.time).toBeCloseTo(5, 9);
    expect(r.clock.achieved).toBeCloseTo(1, 9);
    expect(r.clock.lost).toBeCloseTo(0, 9);
    for (const { time } of r.lanes) expect(r.clock.time - time).toBeLessThanOrEqual(2 * REFRESH + 1e-9);
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

  it.each([0.001, 0.1, 2, 5])('goes %f times as fast as asked', (pace) => {
    const r = race([10, 10]);
    r.clock.setPace(pace);
    r.clock.run();
    r.go(4);
    expect(r.clock.time).toBeCloseTo(4 * pace, 6);
    expect(r.clock.achieved).toBeCloseTo(pace, 6);
  });

  it('lets the slowest lane set the pace for all, and says what pace and what is lost', () => {
    const r = race([10, 0.6, 10, 10]);
    r.clock.run();
    r.go(10);
    expect(r.clock.achieved).toBeCloseTo(0.6, 2);
    expect(Math.abs(r.clock.time - 6)).toBeLessThan(0.1);
    // Simulated and lost make up the whole of the wall clock.
    expect(r.clock.time + r.clock.lost).toBeCloseTo(10, 6);
    for (const { time } of r.lanes) expect(Math.abs(time - r.clock.time)).toBeLessThan(4 * REFRESH);
  });

  it('is never ahead of the slowest lane by more than a few refreshes', () => {
    const r = race([10, 0.2]);
    r.clock.run();
    r.go(5);
    expect(r.spread).toBeLessThanOrEqual(4 * REFRESH);
    const slowDisplay = race([10, 0.2]);
    slowDisplay.clock.run();
    slowDisplay.go(5, 0.1);
    expect(slowDisplay.spread).toBeLessThanOrEqual(0.4);
  });

  it('waits for a lane that stalls, and goes on with it', () => {
    const r = race([10, 10]);
    r.clock.run();
    r.go(1);
    const stalled = r.lanes[1]!;
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

  it('goes on without a lane that has tripped, and rests when all have', () => {
    const r = race([10, 10, 10]);
    r.clock.run();
    r.go(1);
    r.lanes[0]!.tripped = true;
    const tripTime = r.lanes[0]!.time;
    r.go(1);
    expect(r.clock.time).toBeCloseTo(2, 9);
    expect(r.lanes[0]!.time).toBeLessThan(tripTime + 2 * REFRESH);
    for (const lane of r.lanes) lane.tripped = true;
    r.go(1);
    expect(r.clock.time).toBeCloseTo(2, 9);
  });

  it('catches up a short stall of the page and counts a long one as lost', () => {
    const r = race([10, 10]);
    r.clock.run();
    r.go(1);
    r.clock.advance(0.1, r.lanes);
    r.go(1);
    expect(r.clock.time).toBeCloseTo(2.1, 6);
    r.clock.advance(60, r.lanes);
    r.go(1);
    // No more than half a second is caught up with.
    expect(r.clock.time).toBeLessThan(2.1 + 0.5 + 1 + 1e-9);
    expect(r.clock.time + r.clock.lost).toBeCloseTo(1 + 0.1 + 1 + 60 + 1, 6);
  });

  it('goes as fast as the slowest lane when asked to, and loses nothing by it', () => {
    const r = race([14, 6, 10, 17]);
    r.clock.setPace(Number.POSITIVE_INFINITY);
    r.clock.run();
    r.go(10);
    expect(Math.abs(r.clock.achieved - 6)).toBeLessThan(0.3);
    expect(r.clock.lost).toBe(0);
  });

  it('begins anew with a reset and goes on running', () => {
    const r = race([10, 10]);
    r.clock.run();
    r.go(3);
    r.clock.reset();
    for (const lane of r.lanes) lane.reset();
    r.go(1);
    expect(r.clock.time).toBeCloseTo(1, 9);
  });

  it('has nothing to do without lanes', () => {
    const r = race([]);
    r.clock.run();
    r.go(1);
    expect(r.clock.time).toBe(0);
  });
});

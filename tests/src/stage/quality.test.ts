import { describe, expect, it } from 'vitest';
import { QUALITIES, QualityGovernor } from '../../../src/stage/quality.ts';

const run = (governor: QualityGovernor, frameTime: number, seconds: number) => {
  for (let t = 0; t < seconds; t += frameTime) governor.refresh(frameTime);
};

describe('the quality of the picture', () => {
  it('stays at its best on a fast display', () => {
    const governor = new QualityGovernor(0);
    run(governor, 1 / 60, 30);
    expect(governor.level).toBe(0);
  });

  it('falls to the last level on a display of two frames a second', () => {
    const governor = new QualityGovernor(0);
    run(governor, 0.5, 20);
    expect(governor.level).toBe(QUALITIES.length - 1);
  });

  it('takes one long gap for the pause it is', () => {
    const governor = new QualityGovernor(0);
    run(governor, 1 / 60, 1);
    governor.refresh(3600);
    run(governor, 1 / 60, 1);
    expect(governor.level).toBe(0);
  });

  it('rises again, but ever more rarely where that was too much', () => {
    const governor = new QualityGovernor(2);
    // A display that keeps up at levels 1 and below, and not at level 0.
    let rises = 0;
    let before = governor.level;
    for (let t = 0; t < 120; ) {
      const frameTime = governor.level === 0 ? 1 / 12 : 1 / 60;
      governor.refresh(frameTime);
      if (governor.level === 0 && before === 1) rises++;
      before = governor.level;
      t += frameTime;
    }
    expect(rises).toBeGreaterThan(0);
    expect(rises).toBeLessThan(7);
  });
});

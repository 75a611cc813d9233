import { describe, expect, it } from 'vitest';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { between, recordedRun, shelfScene } from '../../scenes/runs.ts';

const peak = (values: number[]) => Math.max(...values.map(Math.abs));

/** One move of the machine on soft mounts, whose base then swings at its own 15 Hz or so. */
function move(changes: ParameterChanges) {
  const scene = shelfScene('soft-base', { dwell: 0.6, ...changes });
  return { p: scene.parameters, ...recordedRun(scene, 0.9) };
}

describe('shaping on a running axis', () => {
  // The table pushes the base: it swings on its mounts with the whole moved mass on top, at its own frequency.
  const { baseFrequency, baseDamping } = shelfScene('soft-base').parameters;
  const shaper = { shaper: 'ZVD', shaperFrequency: baseFrequency, shaperDamping: baseDamping } as const;

  it('a shaper for the mounts leaves the base at rest', () => {
    const swing = (changes: ParameterChanges) =>
      peak(between(move(changes).samples, C.basePosition, 0.7, 0.9));
    expect(swing(shaper) / swing({})).toBeLessThan(0.1);
  });

  it('what shaping takes longer counts as settling: a rigid axis settles later by the time of the stages', () => {
    const settling = (changes: ParameterChanges) =>
      move({ base: false, window: 1e-6, ...changes }).summary.settlingTime!;
    const unshaped = settling({});
    const jerkRamp = settling({ jerkRamp: 0.05 });
    // The last of a jerk ramp is slow: it reaches the window a little before it ends.
    expect(jerkRamp - unshaped).toBeGreaterThan(0.025);
    expect(jerkRamp - unshaped).toBeLessThan(0.05);
  });

  it('peak following error falls with a fourth-order profile on a soft base', () => {
    expect(move({ jerkRamp: 1 / baseFrequency }).summary.peakFollowingError).toBeLessThan(
      move({}).summary.peakFollowingError,
    );
  });
});

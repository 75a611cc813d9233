import { describe, expect, it } from 'vitest';
import type { MoveLine } from '../../../shared/core/scene.ts';
import { cycleMotion } from '../../../shared/motion/cycleMotion.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';
import { apart, candidateOf, sizingAgrees } from './simulated.ts';

// The other types of drive in the long tests.
sizingAgrees('tubular');

describe('a vertical axis with a move list', () => {
  // The list ends where the axis starts, so that the first cycle is like all others.
  const limits = { speed: 0.6, acceleration: 6, jerk: 300 };
  const moves: MoveLine[] = [
    { to: 0.1, ...limits, dwell: 0.25 },
    { to: 0.02, ...limits, speed: 0.2, dwell: 0.05 },
    { to: -0.125, ...limits, acceleration: 3, dwell: 0.3 },
  ];

  it.each([
    ['against its weight', { counterbalanced: 0 }],
    ['half balanced, feeding against a force', { counterbalanced: 0.5, process: 'feed', processForce: 40 }],
    ['balanced, pressed by a constant force', { counterbalanced: 1, process: 'constant', processForce: -60 }],
  ] as const)('%s', (_, changes) => {
    const { scene, figure } = candidateOf(
      'u-channel',
      { motion: 'move list', inclination: Math.PI / 2, ...changes },
      moves,
    );
    const cycle = cycleMotion(scene).reduce((sum, { time }) => sum + time, 0);
    const run = measureRun(scene, cycle);
    expect(run.trip).toBeNull();
    expect(apart(run.rmsForce, figure('rmsForce'))).toBeLessThan(0.01);
    expect(apart(run.peakForce, figure('peakForce'))).toBeLessThan(0.03);
  });
});

describe('a cut with a rapid move back', () => {
  const limits = { acceleration: 5, jerk: 250 };
  const movesWith = (force: number): MoveLine[] => [
    { to: 0.125, speed: 0.2, ...limits, dwell: 0.1, ...(force > 0 && { force }) },
    { to: -0.125, speed: 1, ...limits, dwell: 0.1 },
  ];

  it('works against the cut alone, in sizing as in simulation', () => {
    const cut = candidateOf('u-channel', { motion: 'move list' }, movesWith(80));
    const free = candidateOf('u-channel', { motion: 'move list' }, movesWith(0));
    const cycle = cycleMotion(cut.scene).reduce((sum, { time }) => sum + time, 0);
    const run = measureRun(cut.scene, cycle);
    expect(run.trip).toBeNull();
    expect(apart(run.rmsForce, cut.figure('rmsForce'))).toBeLessThan(0.01);
    expect(apart(run.peakForce, cut.figure('peakForce'))).toBeLessThan(0.03);
    // W = F s: 80 N over the 250 mm of the cut, and nothing on the way back. What the winding loses more comes on top.
    const more = cut.figure('energy') - free.figure('energy');
    expect(more).toBeGreaterThan(80 * 0.25);
    expect(cut.figure('rmsForce')).toBeGreaterThan(free.figure('rmsForce'));
  });
});

import { describe, expect, it } from 'vitest';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { learningRate, learnMove } from '../../../workers/accuracy/learnMove.ts';
import { between, recordedRun, shelfScene } from '../../scenes/runs.ts';

const scene = shelfScene('mould-shuttle', { accelerationFeedforward: 0, encoderNoise: 0 });

describe('learning a repeated move', () => {
  const outcome = learnMove(scene);
  if (!('learned' in outcome)) throw new Error('nothing was learned');
  const { learned } = outcome;
  const { peaks, rms, worstRate } = learned.course;

  it('the error falls with every repeat, at first at least as fast as |Q S| says', () => {
    expect(peaks.at(-1)! / peaks[0]!).toBeLessThan(0.1);
    expect(worstRate).toBeLessThan(1);
    expect(rms[1]! / rms[0]!).toBeLessThan(worstRate);
    expect(rms.at(-1)! / rms[0]!).toBeLessThan(0.2);
  });

  it('what was learned lowers the error of the running axis, and acts on no other move', () => {
    const peak = (changed: typeof scene) =>
      Math.max(...between(recordedRun(changed, 2).samples, C.followingError, 1, 2).map(Math.abs));
    expect(peak({ ...scene, learnedMove: learned }) / peak(scene)).toBeLessThan(0.3);
    const other = { ...scene, parameters: { ...scene.parameters, stroke: 0.2 } };
    expect(peak({ ...other, learnedMove: learned })).toBe(peak(other));
  });
});

it('refuses a bandwidth at which the condition |Q S| < 1 is violated, and says where', () => {
  const wide = { ...scene, parameters: { ...scene.parameters, learningBandwidth: 300 } };
  expect(learningRate(wide.parameters).rate).toBeGreaterThan(1);
  const outcome = learnMove(wide);
  expect('refused' in outcome && outcome.refused).toMatch(
    /^It would not converge: at \d+ Hz .* Lower the learning bandwidth/,
  );
});

it('refuses a program that does not repeat', () => {
  const outcome = learnMove(shelfScene('mould-shuttle', { program: 'hold' }));
  expect('refused' in outcome && outcome.refused).toMatch(/choose the program shuttle or scan/);
});

import { describe, expect, it } from 'vitest';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { harmonicsOf } from '../../../workers/accuracy/harmonics.ts';
import { learningFilter, learningRate, learnMove } from '../../../workers/accuracy/learnMove.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { magnitude, minus, ONE, over, scaled } from '../../../workers/math/complex.ts';
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

// The fixed point of the iteration, from u = Q (u + L e) and e = e_0 − G u: e/e_0 = (1 − Q)/(1 − Q S), harmonic by harmonic.
it('on an air bearing it converges to what Q and the sensitivity of the loop say', () => {
  const free = shelfScene('mould-shuttle', {
    accelerationFeedforward: 0,
    encoderNoise: 0,
    frictionCoefficient: 0,
    stictionCoefficient: 0,
    sealFriction: 0,
    sealStiction: 0,
  });
  const outcome = learnMove(free);
  if (!('learned' in outcome)) throw new Error('nothing was learned');
  const { before, after, bandwidth } = outcome.learned.course;
  const p = free.parameters;
  const loop = new SampledLoop(p, { ...startingPoint(p), friction: 'sliding' });
  const spacing = p.currentRate / p.positionDivider / before.length;
  const near = Math.round(bandwidth / spacing);
  const [first, last] = [harmonicsOf(before, 2 * near), harmonicsOf(after, 2 * near)];
  const strong = first
    .map((e, k) => ({ k, size: magnitude(e), f: (k + 1) * spacing }))
    .filter(({ f }) => f > 0.85 * bandwidth && f < 1.3 * bandwidth)
    .sort((a, b) => b.size - a.size)
    .slice(0, 3);
  for (const { k, f } of strong) {
    const q = learningFilter(f, bandwidth);
    const { sensitivity } = loop.at(2 * Math.PI * f);
    const predicted = magnitude(scaled(over(ONE, minus(ONE, scaled(sensitivity, q))), 1 - q));
    expect(magnitude(over(last[k]!, first[k]!)) / predicted).toBeCloseTo(1, 1);
  }
});

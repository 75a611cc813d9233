import { expect, it } from 'vitest';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { harmonicsOf } from '../../../workers/accuracy/harmonics.ts';
import { learningFilter, learnMove } from '../../../workers/accuracy/learnMove.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { magnitude, minus, ONE, over, scaled } from '../../../workers/math/complex.ts';
import { shelfScene } from '../../scenes/runs.ts';

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

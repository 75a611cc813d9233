import { expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { verdictOf } from '../../../src/loop/verdict.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';

const figuresOf = (changes: object) => {
  const p = { ...sceneById('mould-shuttle').parameters, ...changes };
  return analyse(p, { ...startingPoint(p), friction: 'sliding' }).figures;
};

// As pretuning leaves the opening scene: the coil unit on its link swings above the crossover.
const PRETUNED = { Kp: 1.05e7, Ki: 1.88e9, Kd: 14600, derivativeTime: 1.14e-5, setSpeedDelay: 7.39e-5 };

it('tells a resonance that reaches above 1 from the crossover', () => {
  const figures = figuresOf({ ...PRETUNED, currentBandwidth: 849 });
  expect(figures.crossover).toBe(figures.crossovers[0]);
  expect(figures.crossovers.length).toBeGreaterThan(1);
  expect(verdictOf(figures).text).toMatch(/Above its crossover \|L\| reaches 1 again, last at \d/);
});

it('says nothing of it where there is one crossover', () => {
  const figures = figuresOf({});
  expect(figures.crossovers).toHaveLength(1);
  expect(verdictOf(figures).text).not.toMatch(/again/);
});

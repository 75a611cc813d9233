import { describe, expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { feedbackWeights } from '../../../shared/axis/loop/feedback.ts';
import { startGains } from '../../../shared/axis/loop/startGains.ts';
import { at } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { LoopFamily } from '../../../workers/pretune/loopFamily.ts';
import { isStable } from '../../../workers/pretune/loopLimit.ts';
import { designPoints, plantResponse } from '../../../workers/pretune/plantResponse.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';
import { bareScene } from '../model/sceneOf.ts';

/** The loop analysis finds every figure on the exact response; it is tested against published loops by itself. */
describe.each(SCENES)('the loop of $id', ({ parameters: p }) => {
  const { standing, sliding } = designPoints(p);
  const exact = [analyse(p, standing).figures, analyse(p, sliding).figures];
  const plant = plantResponse(p, 600);
  const family = new LoopFamily(p, plant);

  it('has the peak sensitivity and the margins that the analysis finds, standing and sliding', () => {
    const peak = Math.max(...exact.map(({ modulusMargin }) => 1 / modulusMargin.value));
    expect(family.peakSensitivity(feedbackWeights(p)) / peak).toBeCloseTo(1, 2);
    const { phase, gain } = family.margins(feedbackWeights(p));
    const min = (values: readonly (number | undefined)[]) =>
      Math.min(...values.map((value) => value ?? Number.POSITIVE_INFINITY));
    expect(phase / min(exact.map(({ phaseMargin }) => phaseMargin?.value))).toBeCloseTo(1, 2);
    expect(gain / min(exact.map(({ gainMargin }) => gainMargin?.value))).toBeCloseTo(1, 2);
  });

  it('is as stable as the analysis says', () => {
    const wild = { ...p, ...startGains(p, 700) };
    for (const parameters of [p, wild]) {
      const figures = [standing, sliding].map((point) => analyse(parameters, point).figures);
      expect(isStable(parameters, plantResponse(parameters, 10))).toBe(figures.every(({ stable }) => stable));
    }
  });
});

describe('encoder noise', () => {
  it('makes the current that a run has, to the few per cent of its random draw', () => {
    const scene = bareScene({ program: 'hold', encoderNoise: 2e-9, viscous: 10 });
    const p = scene.parameters;
    const family = new LoopFamily(p, plantResponse(p, 600));
    let sum = 0;
    let count = 0;
    measureRun(scene, 2, (record) => {
      if (at(record, C.time) < 0.2) return;
      sum += at(record, C.currentCommand) ** 2;
      count++;
    });
    const predicted = family.noiseCurrent(feedbackWeights(p), p.encoderNoise, 0);
    expect(predicted).toBeGreaterThan(0);
    // 14,000 samples that hang together over a few: about 2 % of spread.
    expect(Math.abs(Math.sqrt(sum / count) / predicted - 1)).toBeLessThan(0.05);
  });
});

import { describe, expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { problemText } from '../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { handlesOf, type Shaping } from '../../../src/loop/handles/handles.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';

const soft = sceneById('soft-coil-mounting').parameters;

const handles = (parameters: Parameters) => {
  const point = { ...startingPoint(parameters), friction: 'sliding' as const };
  const all = handlesOf({ parameters, point, analysis: analyse(parameters, point) });
  return new Map(all.map((handle) => [handle.id, handle]));
};

function changesOf(shaping: Shaping, p: Parameters) {
  if (typeof shaping === 'string') throw new Error(shaping);
  expect(checkParameters(shaping.changes, p).problems).toEqual([]);
  return shaping.changes;
}

describe('handles of the loop', () => {
  it('are there for what is in use, crossover first', () => {
    expect([...handles(soft).keys()]).toEqual(['crossover', 'notch1', 'notch1 width']);
    const all = { ...soft, notch1: false, notch2: true, notch2Frequency: 900, lowpass: true };
    expect([...handles(all).keys()]).toEqual([
      'crossover',
      'notch2',
      'notch2 width',
      'lowpass',
      'resonance 0',
    ]);
  });

  it('a notch goes where its handle is dragged: across its frequency, down its depth', () => {
    const to = present(present(handles(soft).get('notch1')).drag)({ frequency: 250, level: -40 });
    // −40 dB is a hundredth.
    expect(changesOf(to, soft)).toEqual({ notch1Frequency: 250, notch1Depth: 0.01 });
  });

  it.each([
    [1e-3, 60],
    [1e6, -400],
  ])('a handle dragged off the plot, to %f Hz and %f dB, keeps its ranges', (frequency, level) => {
    const p = { ...soft, lowpass: true };
    for (const name of ['notch1', 'notch1 width', 'lowpass']) {
      const shaping = present(present(handles(p).get(name)).drag)({ frequency, level });
      if (typeof shaping === 'string') throw new Error(shaping);
      for (const problem of checkParameters(shaping.changes, p).problems)
        expect(problemText(problem, AS_WRITTEN)).toMatch(/half the rate/);
    }
  });

  it('the width follows its edge, also when that is dragged to the other side', () => {
    const edge = present(handles(soft).get('notch1 width'));
    expect(changesOf(present(edge.drag)(edge), soft).notch1Width).toBeCloseTo(soft.notch1Width, 2);
    const above = changesOf(present(edge.drag)({ frequency: 400, level: 0 }), soft);
    const below = changesOf(present(edge.drag)({ frequency: 100, level: 0 }), soft);
    expect(above).toEqual(below);
    // D = (u − 1/u)/2 with u = 2.
    expect(above.notch1Width).toBeCloseTo(0.75, 6);
  });

  it('a low-pass shows its damping as its height: 1/(2D) at its corner', () => {
    const p = { ...soft, lowpass: true, lowpassDamping: 0.5 };
    const handle = present(handles(p).get('lowpass'));
    expect(handle.level).toBeCloseTo(0, 9);
    expect(changesOf(present(handle.drag)({ frequency: 1200, level: 0 }), p)).toEqual({
      lowpassFrequency: 1200,
      lowpassDamping: 0.5,
    });
  });

  it('a filter goes off by its handle', () => {
    expect(changesOf(present(present(handles(soft).get('notch1')).remove)(), soft)).toEqual({
      notch1: false,
    });
  });
});

import { describe, expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import { problemText } from '../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import type { Shaping } from '../../../src/loop/handles/handle.ts';
import { handlesOf } from '../../../src/loop/handles/handles.ts';
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
    expect([...handles(soft).keys()]).toEqual(['crossover', 'filter1', 'filter1 width']);
    const all = {
      ...soft,
      filter1: 'off' as const,
      filter2: 'notch' as const,
      filter2Frequency: 900,
      filter3: 'low-pass' as const,
    };
    expect([...handles(all).keys()]).toEqual([
      'crossover',
      'filter2',
      'filter2 width',
      'filter3',
      'resonance 0',
    ]);
  });

  it('a notch goes where its handle is dragged: across its frequency, down its depth', () => {
    const to = present(present(handles(soft).get('filter1')).drag)({ frequency: 250, level: -40 });
    // −40 dB is a hundredth.
    expect(changesOf(to, soft)).toEqual({ filter1Frequency: 250, filter1Depth: 0.01 });
  });

  it.each([
    [1e-3, 60],
    [1e6, -400],
  ])('a handle dragged off the plot, to %f Hz and %f dB, keeps its ranges', (frequency, level) => {
    const p = { ...soft, filter3: 'low-pass' as const };
    for (const name of ['filter1', 'filter1 width', 'filter3']) {
      const shaping = present(present(handles(p).get(name)).drag)({ frequency, level });
      if (typeof shaping === 'string') throw new Error(shaping);
      for (const problem of checkParameters(shaping.changes, p).problems)
        expect(problemText(problem, AS_WRITTEN)).toMatch(/half the rate/);
    }
  });

  it('the width follows its edge, also when that is dragged to the other side', () => {
    const edge = present(handles(soft).get('filter1 width'));
    expect(changesOf(present(edge.drag)(edge), soft).filter1Damping).toBeCloseTo(soft.filter1Damping, 2);
    const above = changesOf(present(edge.drag)({ frequency: 400, level: 0 }), soft);
    const below = changesOf(present(edge.drag)({ frequency: 100, level: 0 }), soft);
    expect(above).toEqual(below);
    // D = (u − 1/u)/2 with u = 2.
    expect(above.filter1Damping).toBeCloseTo(0.75, 6);
  });

  it('a low-pass shows its damping as its height: 1/(2D) at its corner', () => {
    const p = { ...soft, filter3: 'low-pass' as const, filter3Damping: 0.5 };
    const handle = present(handles(p).get('filter3'));
    expect(handle.level).toBeCloseTo(0, 9);
    expect(changesOf(present(handle.drag)({ frequency: 1200, level: 0 }), p)).toEqual({
      filter3Frequency: 1200,
      filter3Damping: 0.5,
    });
  });

  it('a filter goes off by its handle', () => {
    expect(changesOf(present(present(handles(soft).get('filter1')).remove)(), soft)).toEqual({
      filter1: 'off' as const,
    });
  });

  it('each type of filter has a handle that drags what it has', () => {
    const dragged = (changes: ParameterChanges, to: { frequency: number; level: number }) => {
      const p = { ...soft, filter4Frequency: 300, ...changes };
      return changesOf(present(present(handles(p).get('filter4')).drag)(to), p);
    };
    const to = { frequency: 400, level: 20 * Math.log10(2) };
    expect(dragged({ filter4: 'peak' }, to)).toEqual({ filter4Frequency: 400, filter4Rise: 2 });
    expect(dragged({ filter4: 'lead-lag' }, to)).toEqual({ filter4Frequency: 400, filter4Ratio: 4 });
    expect(dragged({ filter4: 'low-pass' }, to)).toEqual({ filter4Frequency: 400, filter4Damping: 0.25 });
    const typed = handles({ ...soft, filter4: 'coefficients', filter4A1: -1.6, filter4A2: 0.81 }).get(
      'filter4',
    );
    expect(typed?.drag).toBeNull();
    // Poles at radius 0.9 and cos θ = 1.6/1.8.
    const rate = soft.currentRate / soft.positionDivider;
    expect(typed?.frequency).toBeCloseTo((Math.acos(1.6 / 1.8) * rate) / (2 * Math.PI), 6);
  });
});

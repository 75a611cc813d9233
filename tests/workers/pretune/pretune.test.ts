import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import { crossChecks } from '../../../shared/core/crossChecks.ts';
import { ranged } from '../../../shared/core/format.ts';
import { type ParameterName, parameterRow } from '../../../shared/core/parameters/table.ts';
import type { PretuneGoal, PretuneProgress } from '../../../shared/protocol/pretune.ts';
import { LoopDesigner } from '../../../workers/pretune/loopDesign.ts';
import { plantResponse } from '../../../workers/pretune/plantResponse.ts';
import { JobPool } from '../../../workers/pretune/pool.ts';
import { tune } from '../../../workers/pretune/pretune.ts';
import { coordinates, shapeOf, structuresFor } from '../../../workers/pretune/structure.ts';
import { soundness } from '../../../workers/pretune/tryOut.ts';
import { here, pretuned } from './run.ts';
import { figuresOf, GOAL, peakOf, QUICK, SCENE } from './shortShuttle.ts';

/** One result for all tests that look at what a result is like. */
const progress: PretuneProgress[] = [];
const running = pretuned(SCENE, GOAL, [here], QUICK, (step) => progress.push(step));

const MARGINS = { kind: 'margins', phase: (50 * Math.PI) / 180, gain: 4 } as const;

describe('a goal', () => {
  it('of peak sensitivity is kept, and used up', async () => {
    const result = await running;
    expect(figuresOf(result).every(({ stable }) => stable)).toBe(true);
    expect(result.best.peakSensitivity).toBeCloseTo(peakOf(result), 9);
    expect(peakOf(result)).toBeLessThan(1.6 * 1.01);
    expect(Math.max(...result.points.map(({ peakSensitivity }) => peakSensitivity))).toBeGreaterThan(
      1.6 * 0.98,
    );
  });

  it('of margins is kept by a loop, and used up', () => {
    const designer = new LoopDesigner(SCENE.parameters, 600);
    const plain = at(structuresFor(plantResponse(SCENE.parameters, 160), SCENE.parameters), 0);
    const start = coordinates(plain, designer.rate).map((each) => each.start);
    const { shape, gains } = present(designer.fastest(shapeOf(plain, start), MARGINS));
    const p = { ...SCENE.parameters, ...gains, derivativeTime: shape.derivativeTime };
    const { phaseMargin, gainMargin } = soundness(p);
    const [phase, gain] = [present(phaseMargin) / MARGINS.phase, present(gainMargin) / MARGINS.gain];
    expect(Math.min(phase, gain)).toBeGreaterThan(0.99);
    expect(Math.min(phase, gain)).toBeLessThan(1.02);
  });

  it.each<[PretuneGoal, RegExp]>([
    [{ kind: 'peak sensitivity', limit: 1 }, /^limit is 1; allowed is 1\.1 to 4\.$/],
    [{ kind: 'peak sensitivity', limit: Number.NaN }, /^limit is NaN; allowed is/],
    [{ kind: 'margins', phase: 2, gain: 3 }, /^phase is 114\.59.*°; allowed is 10° to 80°\.$/],
    [{ kind: 'margins', phase: 1, gain: 1 }, /^gain is 1; allowed is 1\.2 to 20\.$/],
    [{ kind: 'settling', window: 1, sensitivityLimit: 1.5 }, /^window is .*; allowed is/],
    [
      { kind: 'settling', window: 1e-6, sensitivityLimit: 9 },
      /^sensitivityLimit is 9; allowed is 1\.1 to 4\.$/,
    ],
  ])('that cannot be is refused: %j', async (goal, message) => {
    await expect(pretuned(SCENE, goal)).rejects.toThrow(message);
    await expect(pretuned(SCENE, goal)).rejects.toThrow(RangeError);
  });
});

describe('while it runs', () => {
  it('the best tuning so far is told: a textbook one before any search has ended, then better ones', async () => {
    const { best } = await running;
    const told = progress.flatMap(({ soFar }) => soFar ?? []);
    const points = told.map(({ point }) => point).filter((point, k, all) => point !== all[k - 1]);
    expect(present(progress.find(({ soFar }) => soFar !== null)).done).toBeLessThanOrEqual(1);
    expect(present(points[0]).origin).toBe('textbook');
    const last = present(points.at(-1));
    expect(last.origin).toBe('pretuned');
    for (const { peakSensitivity, trip } of points) {
      expect(peakSensitivity).toBeLessThan(1.6 * 1.01);
      expect(trip).toBeNull();
    }
    expect(last.settlingTime ?? Infinity).toBeLessThanOrEqual(points[0]?.settlingTime ?? Infinity);
    expect(last.rmsError).toBeLessThanOrEqual(best.rmsError * 1.001);
  });
});

describe('the first answer', () => {
  it('is there before any run has ended, keeps the goal, and tells what the analysis of that loop says', async () => {
    await running;
    const first = present(progress.find(({ foreseen }) => foreseen !== null));
    expect(first.soFar).toBeNull();
    expect(first.done).toBe(0);
    const { changes, peakSensitivity, phaseMargin, gainMargin, crossover } = present(first.foreseen);
    expect(peakSensitivity).toBeGreaterThan(1.6 * 0.98);
    expect(peakSensitivity).toBeLessThan(1.6 * 1.01);
    expect({ peakSensitivity, phaseMargin, gainMargin, crossover }).toEqual(
      soundness({ ...SCENE.parameters, ...changes }),
    );
  });

  it('decays with the integrator, whose zero holds a closed-loop pole near a tenth of the crossover, as a root locus has it', async () => {
    await running;
    const { label, decay, crossover } = present(progress.findLast(({ foreseen }) => foreseen)?.foreseen);
    expect(label).toBe('lead ratios');
    expect(present(decay) / (10 / (2 * Math.PI * present(crossover)))).toBeCloseTo(1, 0);
  });
});

describe('a result', () => {
  it('has only tunings that are legal and need no restart', async () => {
    for (const { changes } of (await running).points) {
      expect(checkParameters(changes, SCENE.parameters).problems).toEqual([]);
      expect(crossChecks({ ...SCENE.parameters, ...changes })).toEqual([]);
      for (const name of Object.keys(changes))
        expect(parameterRow(name as ParameterName).restart).toBe(false);
    }
  });

  it('has the textbook at the peak sensitivity of the best', async () => {
    const { best, textbook } = await running;
    expect(present(textbook).peakSensitivity / best.peakSensitivity).toBeCloseTo(1, 1);
    expect(Math.abs(present(textbook).peakSensitivity / best.peakSensitivity - 1)).toBeLessThan(0.02);
  });

  it('says of every value why, by a rule, and says the value', async () => {
    const { best, choices } = await running;
    expect(choices.map(({ parameter }) => parameter).sort()).toEqual(Object.keys(best.changes).sort());
    for (const { parameter, value, sentence, rule } of choices) {
      expect(value).toBe(best.changes[parameter]);
      expect(rule).not.toBe('');
      expect(sentence).toMatch(/^[^.].*[^.]\.$/s);
      const row = parameterRow(parameter);
      if (row.kind === 'number' && value !== 0) expect(sentence).toContain(ranged(value as number, row.unit));
      if (row.kind === 'switch') expect(sentence).toMatch(value ? /^On:/ : /^Off:/);
    }
    const rules = choices.map(({ rule }) => rule);
    for (const rule of ['magnitude optimum', 'loop shaping', 'force balance']) expect(rules).toContain(rule);
  });

  it('reports every job, and as many as it promised', async () => {
    await running;
    const last = present(progress.at(-1));
    expect(last.done).toBe(last.total);
    for (const [k, { done, total }] of progress.entries()) {
      expect(total).toBe(last.total);
      if (k > 0) expect(done).toBeGreaterThanOrEqual(at(progress, k - 1).done);
    }
    expect(new Set(progress.map(({ stage }) => stage)).size).toBe(6);
  });

  it('has the same best tuning where nothing is compared with it, in fewer jobs', async () => {
    const { best } = await running;
    const told: PretuneProgress[] = [];
    expect(await tune(SCENE, GOAL, new JobPool([here]), (step) => told.push(step), QUICK)).toEqual(best);
    const last = present(told.at(-1));
    expect(last.done).toBe(last.total);
    expect(last.total).toBeLessThan(present(progress.at(-1)).total);
  });
});

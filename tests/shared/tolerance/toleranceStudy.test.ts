import { describe, expect, it } from 'vitest';
import { DEFAULT_SCENE, SHELF, sceneById } from '../../../scenes/index.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import { crossChecks } from '../../../shared/core/crossChecks.ts';
import { problemTexts } from '../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { readTolerance, writeTolerance } from '../../../shared/files/toleranceFile.ts';
import { badness, isGood, type RunResult } from '../../../shared/tolerance/runFigures.ts';
import { machinesOf, type ToleranceStudy } from '../../../shared/tolerance/toleranceStudy.ts';

const FILE = {
  waybench: 'tolerance study',
  version: 1,
  scene: 'mould-shuttle',
  spreads: {
    payload: { kind: 'per cent', share: 0.1 },
    viscous: { kind: 'uniform', from: 10, to: 25 },
    fluxDeviation: { kind: 'normal', mean: 0, deviation: 0.02, cut: 3 },
  },
  limits: { settlingTime: 0.08 },
  sampling: 'Sobol',
  seed: 3,
  runs: 512,
};

function study(changes: object = {}): ToleranceStudy {
  const read = readTolerance({ ...FILE, ...changes }, SHELF);
  if ('problems' in read) throw new Error(problemTexts(read.problems, AS_WRITTEN).join('\n'));
  return read.study;
}

it.each(['Sobol', 'Latin hypercube'])(
  '%s: machines fill the ranges, and every one of them is legal',
  (sampling) => {
    const { scene, runs } = study({ sampling });
    const machine = machinesOf(study({ sampling }));
    const all = Array.from({ length: runs }, (_, k) => machine(k + 1).scene.parameters);
    const range = (of: (p: (typeof all)[number]) => number) => [
      Math.min(...all.map(of)),
      Math.max(...all.map(of)),
    ];
    const [lightest = 0, heaviest = 0] = range(({ payload }) => payload);
    expect(lightest).toBeGreaterThan(0.9 * 4);
    expect(lightest).toBeLessThan(0.901 * 4);
    expect(heaviest).toBeLessThan(1.1 * 4);
    expect(heaviest).toBeGreaterThan(1.099 * 4);
    const [weakest = 0, strongest = 0] = range(({ fluxDeviation }) => fluxDeviation);
    expect(weakest).toBeGreaterThan(-0.06);
    expect(strongest).toBeLessThan(0.06);
    // The standard deviation of a normal distribution that is cut off at 3 σ is 0.9866 σ.
    const meanSquare = all.reduce((sum, { fluxDeviation }) => sum + fluxDeviation ** 2, 0) / runs;
    expect(Math.sqrt(meanSquare) / 0.02).toBeCloseTo(0.9866, 2);
    for (const p of all) {
      expect(checkParameters(p, scene.parameters).problems).toEqual([]);
      expect(crossChecks(p)).toEqual([]);
    }
    // Nothing else differs but the noise of the encoder.
    const { payload, viscous, fluxDeviation, seed, ...others } = all[7] ?? scene.parameters;
    expect({ ...scene.parameters, payload, viscous, fluxDeviation, seed }).toEqual({
      ...others,
      payload,
      viscous,
      fluxDeviation,
      seed,
    });
    expect(new Set(all.map(({ seed }) => seed)).size).toBe(runs);
  },
);

it('a machine is the same in whichever order it is asked for', () => {
  const [one, other] = [machinesOf(study()), machinesOf(study())];
  const late = one(400);
  one(1);
  expect(other(400)).toEqual(late);
});

it('a study file reads back number by number, with its scene in it', () => {
  const made = study();
  const text = writeTolerance(made);
  expect(readTolerance(text, { presets: {}, scenes: [] })).toEqual({
    study: { ...made, scene: { ...made.scene, id: null, preset: null } },
  });
  expect(JSON.parse(text).scene.parameters.payload).toBe(4);
});

describe('is refused, with what to do', () => {
  it.each([
    ['nothing that spreads', { spreads: {} }, /^spreads: there are 0\. Give one to 20/],
    [
      'a misspelt parameter',
      { spreads: { paylod: {} } },
      /"paylod" is not a parameter that can spread\. Did you mean "payload"/,
    ],
    ['a count', { spreads: { motorCount: {} } }, /"motorCount" is not a parameter that can spread/],
    [
      'a kind there is not',
      { spreads: { payload: { kind: 'even' } } },
      /payload\.kind: "even" is not one of per cent, uniform, normal/,
    ],
    [
      'an entry of another kind',
      { spreads: { payload: { kind: 'uniform', from: 3, to: 5, cut: 3 } } },
      /"cut" is not an entry of “uniform”/,
    ],
    [
      'a percentage of 0',
      { spreads: { backlash: { kind: 'per cent', share: 0.1 } } },
      /backlash: it is 0 in this scene, .* Give two values/,
    ],
    [
      'a range that is none',
      { spreads: { payload: { kind: 'uniform', from: 5, to: 3 } } },
      /“to” must be more than “from”/,
    ],
    [
      'a range that passes a limit',
      { spreads: { payload: { kind: 'normal', mean: 1, deviation: 0.5, cut: 3 } } },
      /payload: −0\.5 kg is outside/,
    ],
    [
      'a range that reaches “off”',
      { spreads: { backlash: { kind: 'uniform', from: 0, to: 1e-6 } } },
      /backlash: the range reaches 0, which switches it off\. Begin at 1·10⁻⁸ m/,
    ],
    [
      'a range in which values contradict each other',
      { spreads: { windingStart: { kind: 'uniform', from: 20, to: 150 } } },
      /spreads\.?.*windingStart|windingStart.* must be less than windingLimit/,
    ],
    [
      'a figure there is not',
      { limits: { setlingTime: 0.1 } },
      /"setlingTime" is not a figure\. Did you mean/,
    ],
    ['a limit below 0', { limits: { peakError: -1 } }, /limits: peakError: −1 m is outside 0 m to 1 m/],
    ['half a machine', { runs: 10.5 }, /runs: 10\.5 is not a whole number/],
    ['a drive that is off', { scene: 'free-pull-iron' }, /The drive is off\. .* switch it on/],
    ['an entry too many', { points: 3 }, /"points" is not an entry of a tolerance study/],
    ['a scene with a wrong entry', { scene: { ...FILE, waybench: 'scene', version: 3 } }, /^scene/],
  ])('%s', (_, changes, message) => {
    const read = readTolerance({ ...FILE, ...changes }, SHELF);
    expect('problems' in read ? problemTexts(read.problems, AS_WRITTEN).join('\n') : '').toMatch(message);
  });
});

it('a machine is good when it does not trip and keeps all limits; the others are ordered by how far they are off', () => {
  const figures = {
    settlingTime: 0.05,
    peakError: 8e-6,
    rmsError: 3e-6,
    peakCurrent: 4,
    windingTemperature: 28,
  };
  const ok: RunResult = { run: 1, trip: null, holds: true, figures };
  const limits = { settlingTime: 0.06, peakError: 1e-5 };
  expect(isGood(ok, limits)).toBe(true);
  expect(isGood({ ...ok, holds: false }, limits)).toBe(false);
  const late = { ...ok, figures: { ...figures, settlingTime: 0.061 } };
  const never = { ...ok, figures: { ...figures, settlingTime: null } };
  const tripped: RunResult = { ...never, trip: 'following error' };
  for (const each of [late, never, tripped]) expect(isGood(each, limits)).toBe(false);
  expect(isGood(never, {})).toBe(true);
  const order = [ok, late, never, tripped].map((each) => badness(each, limits));
  expect(order).toEqual(order.toSorted((a, b) => a - b));
});

it('the opening scene is one of the shelf', () => {
  expect(study().scene).toBe(DEFAULT_SCENE);
  expect(sceneById('mould-shuttle')).toBe(DEFAULT_SCENE);
});

import { expect, it } from 'vitest';
import { SHELF } from '../../../scenes/index.ts';
import { readTolerance } from '../../../shared/files/toleranceFile.ts';
import type { RunResult } from '../../../shared/tolerance/runFigures.ts';
import { machinesOf, type ToleranceStudy } from '../../../shared/tolerance/toleranceStudy.ts';
import { summarise } from '../../../workers/tolerance/summarise.ts';

const read = readTolerance(
  {
    waybench: 'tolerance study',
    version: 1,
    scene: 'mould-shuttle',
    spreads: { payload: { kind: 'per cent', share: 0.1 }, viscous: { kind: 'per cent', share: 0.1 } },
    limits: { settlingTime: 0.06 },
    runs: 400,
  },
  SHELF,
);
if ('problems' in read) throw new Error('The study of this test is not legal.');
const study: ToleranceStudy = read.study;
const machine = machinesOf(study);

/** As if settling took longer with the payload alone. */
const results: RunResult[] = Array.from({ length: 400 }, (_, k) => {
  const [payload = 0] = machine(k + 1).values;
  const settlingTime = 0.05 * (payload / 4) ** 2;
  const figures = { settlingTime, peakError: 8e-6, rmsError: 3e-6, peakCurrent: 4, windingTemperature: 28 };
  return { run: k + 1, trip: null, holds: true, figures };
});

it('counts, ranks and finds the worst, whatever the order', () => {
  const summary = summarise(study, results);
  expect(summary).toEqual(
    summarise(
      study,
      results.toReversed().toSorted((a, b) => a.run - b.run),
    ),
  );
  const slowest = results.reduce((a, b) =>
    (b.figures.settlingTime ?? 0) > (a.figures.settlingTime ?? 0) ? b : a,
  );
  expect(summary?.worst).toBe(slowest.run);
  // Of payloads within ±10 %, those above 4 kg·√1.2 = 4.382 kg fail: (4.4 − 4.382)/0.8.
  const failing = (4.4 - 4 * Math.sqrt(1.2)) / 0.8;
  expect(1 - (summary?.good.share ?? 0)).toBeCloseTo(failing, 2);
  expect(summary?.good.low).toBeLessThan(1 - failing);
  expect(summary?.good.high).toBeGreaterThan(1 - failing);
  const settling = summary?.figures.find(({ name }) => name === 'settlingTime');
  expect(settling).toMatchObject({ count: 400, worst: slowest.run, max: slowest.figures.settlingTime });
  expect(settling?.median).toBeCloseTo(0.05, 3);
  const depends = summary?.sensitivities.find(({ of }) => of === 'settlingTime');
  expect(depends?.influences[0]).toMatchObject({ name: 'payload' });
  expect(depends?.influences[0]?.share).toBeGreaterThan(0.95);
  expect(depends?.influences[0]?.slope).toBeCloseTo(1, 2);
  expect(depends?.influences[1]?.share).toBeLessThan(depends?.noise ?? 0);
});

it('counts trips by their kind; one that tripped is the worst', () => {
  const [first, second, ...others] = results as [RunResult, RunResult, ...RunResult[]];
  const none = {
    settlingTime: null,
    peakError: null,
    rmsError: null,
    peakCurrent: null,
    windingTemperature: null,
  };
  const summary = summarise(study, [
    { ...first, figures: { ...first.figures, settlingTime: null } },
    { ...second, trip: 'oscillation', figures: none },
    ...others,
  ]);
  expect(summary).toMatchObject({
    trips: [{ kind: 'oscillation', count: 1 }],
    unsettled: 1,
    worst: second.run,
  });
});

it('says nothing before the first machine, and nothing of influences before there are enough', () => {
  expect(summarise(study, [])).toBeNull();
  expect(summarise(study, results.slice(0, 5))?.sensitivities).toEqual([]);
});

import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { growthAt } from '../../../shared/axis/growth.ts';
import { startGains } from '../../../shared/axis/loop/startGains.ts';
import { at, present } from '../../../shared/core/at.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import type { CandidateProgress } from '../../../shared/study/outcome.ts';
import { ripple } from '../../../workers/accuracy/ripple.ts';
import { tested } from '../../../workers/accuracy/testAxis.ts';
import { evaluateCandidate } from '../../../workers/study/evaluateCandidate.ts';
import { found, jobOf } from '../accuracy/bench.ts';

const job = jobOf({
  travel: 0.1,
  stroke: 0.06,
  moveTime: 0.3,
  scanLength: 0.005,
  dailyTime: 7200,
  window: 1e-6,
  wear: 3e-6,
});
const CROSSOVER = 100;
const candidate = { preset: 'screw', motorCount: 1, own: {}, gains: null };
const gains = startGains(candidateScene(job, candidate, PRESETS).parameters, CROSSOVER);
const scene = candidateScene(job, { ...candidate, gains }, PRESETS);

describe('a candidate with a screw', () => {
  const heard: CandidateProgress[] = [];
  const outcome = evaluateCandidate(job, scene, (progress) => void heard.push(progress));
  const [cold, warm, worn] = outcome.accuracy.positioning.map(found);

  it('tells how far it is, forward only, to the end', () => {
    const shares = heard.map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares[0]).toBe(0);
    expect(shares.at(-1)).toBe(1);
    expect(new Set(heard.map(({ stage }) => stage))).toContain('Positioning, worn');
  });

  it('has moved there and back twice at least, and has lived through the day', () => {
    expect(outcome.moves.trip).toBeNull();
    expect(outcome.moves.moves.length).toBeGreaterThanOrEqual(4);
    expect(outcome.heat.hours).toBe(2);
    expect(outcome.heat.asSet.trip).toBeNull();
  });

  it('is measured cold, warm and worn', () => {
    expect([cold, warm, worn].map((test) => present(test).state)).toEqual(['cold', 'warm', 'worn']);
    // Behind or, carried on by its own mass, ahead: the table stands off by what wear adds, give or take what it was off before.
    expect(Math.abs(present(worn).figures.reversal - job.values.wear)).toBeLessThan(
      present(warm).figures.reversal,
    );
  });

  // Two ways to the same growth: temperatures of the time-lapse through the closed form, and the running axis.
  it('stands warm where the growth of the day puts it', () => {
    const end = present(outcome.heat.asSet.samples.at(-1));
    present(warm).targets.forEach((target, i) => {
      const middle = (test: typeof warm) =>
        (at(present(test).figures.meanUp, i) + at(present(test).figures.meanDown, i)) / 2;
      const growth = growthAt(scene.parameters, end, target);
      expect(Math.abs(growth)).toBeGreaterThan(1e-6);
      expect(Math.abs((middle(warm) - middle(cold)) / growth - 1)).toBeLessThan(0.1);
    });
  });

  it('is tested again only for what another job changes, with the result of testing everything', () => {
    const again = (values: Partial<typeof job.values>) => {
      const other = { ...job, values: { ...job.values, ...values } };
      return evaluateCandidate(other, scene, () => {}, { job, outcome });
    };
    const scanned = again({ scanLength: 0.02 });
    expect(scanned.accuracy.ripple).toEqual(
      tested(() => ripple(scene, { ...job, values: { ...job.values, scanLength: 0.02 } })),
    );
    expect(scanned.accuracy.ripple).not.toEqual(outcome.accuracy.ripple);
    expect({ ...scanned, accuracy: { ...scanned.accuracy, ripple: null } }).toEqual({
      ...outcome,
      accuracy: { ...outcome.accuracy, ripple: null },
    });

    const more = again({ wear: 6e-6 }).accuracy;
    expect(more.positioning.slice(0, 2)).toEqual(outcome.accuracy.positioning.slice(0, 2));
    expect(present(found(at(more.positioning, 2))).figures.reversal).toBeGreaterThan(
      present(worn).figures.reversal,
    );
  });

  it('has the crossover that its gains are made for, and a figure for its soundness', () => {
    expect(Math.abs(present(outcome.crossover) / CROSSOVER - 1)).toBeLessThan(0.2);
    expect(outcome.peakSensitivity).toBeGreaterThan(1);
    expect(outcome.peakSensitivity).toBeLessThan(2.5);
  });
});

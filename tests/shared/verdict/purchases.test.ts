import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { purchaseSentences } from '../../../shared/verdict/purchases.ts';
import { rank } from '../../../shared/verdict/ranking.ts';
import { robustnessSentence } from '../../../shared/verdict/robustness.ts';
import { recordedCandidates, recordedDrives, recordedJob } from '../study/recordedStudy.ts';
import { withDay } from './candidates.ts';

const job = recordedJob();
const candidates = recordedCandidates(job);

describe('what can be bought', () => {
  it('is a coolant for the drive that drifts too far in air, and the day with a coolant says whether it is enough', () => {
    const { A, C } = recordedDrives(job);
    expect(rank(job, [A, C]).shortfalls[1]?.map(({ row }) => row)).toEqual(['growth']);
    const largest = Math.max(...C.outcome.heat.switched.samples.map(({ growth }) => Math.abs(growth)));
    expect(largest).toBeLessThan(job.values.growthLimit);
    expect(purchaseSentences(job, [A, C], PRESETS)).toEqual([
      expect.stringMatching(/^B \(.*\)|^C \(.*\): with a coolant it meets every requirement /),
    ]);
    const { heat } = C.outcome;
    const inVain = { ...C, outcome: { ...C.outcome, heat: { ...heat, switched: heat.asSet } } };
    expect(purchaseSentences(job, [A, inVain], PRESETS)).toEqual([]);
  });

  it('is paid for by the drive that needs it', () => {
    const { A, C } = recordedDrives(job);
    const said = (priceMedium: number) =>
      purchaseSentences({ ...job, values: { ...job.values, priceMedium } }, [A, C], PRESETS).join();
    // C costs 65 less than A; the chiller is a medium effort.
    expect(said(800)).toContain('but does not come first');
    expect(said(10)).toContain('and comes first');
  });

  it('is another motor or the next size where the sizing fails, and they pass the sizing', () => {
    const heavy = recordedJob({ payload: 60, growthLimit: 0 });
    const [A] = recordedCandidates(heavy);
    const [sentence] = purchaseSentences(heavy, [A!], PRESETS);
    expect(sentence).toMatch(
      /^A \(.*\): with another motor or the next size \(.*400 N\) it meets every requirement/,
    );
    const two = candidateScene(heavy, { ...A!.choice, motorCount: 2, gains: null }, PRESETS);
    expect(sizeCandidate(heavy, two).passes).toBe(true);
    expect(sizeCandidate(heavy, A!.scene).passes).toBe(false);
  });

  it('is nothing for a drive that meets every requirement', () => {
    expect(purchaseSentences(job, [recordedDrives(job).A], PRESETS)).toEqual([]);
  });
});

describe('inputs that are not known exactly', () => {
  it('leave a choice with reserve as it is', () => {
    expect(robustnessSentence(job, candidates, PRESETS)).toMatch(
      /^The choice holds with .* all at once, by calculation;/,
    );
  });

  it('are named where one of them alone changes the choice', () => {
    // 49 kg are near what the continuous force carries.
    const near = recordedJob({ payload: 45, growthLimit: 0, rippleLimit: 0 });
    const { A } = recordedDrives(near);
    expect(rank(near, [A]).first).toEqual([0]);
    expect(robustnessSentence(near, [A], PRESETS)).toMatch(
      /^The choice depends on what is not known exactly: with a load 10 % heavier no drive meets the requirements/,
    );
  });

  it('say nothing where there is no choice', () => {
    const { D } = recordedDrives(job);
    expect(robustnessSentence(job, [withDay(D, (each) => each)], PRESETS)).toBe('');
  });
});

import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { largestGrowth } from '../../../shared/axis/growth.ts';
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
  it('is a coolant or a scale that does not grow for the drive that drifts too far in air, and the day with a coolant says whether it is enough', () => {
    const { A, C } = recordedDrives(job);
    expect(rank(job, [A, C]).shortfalls[1]?.map(({ row }) => row)).toEqual(['growth']);
    const largest = Math.max(...C.outcome.heat.switched.samples.map(({ growth }) => Math.abs(growth)));
    expect(largest).toBeLessThan(job.values.growthLimit);
    expect(purchaseSentences(job, [A, C], PRESETS)).toEqual([
      expect.stringMatching(
        /^C \(.*\): with an interferential scale on the table or a coolant it meets every requirement /,
      ),
    ]);
    const { heat } = C.outcome;
    const inVain = { ...C, outcome: { ...C.outcome, heat: { ...heat, switched: heat.asSet } } };
    expect(purchaseSentences(job, [A, inVain], PRESETS).join()).not.toContain('coolant');
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

  it('grows as the simulated day had it, where nothing that grows is bought', () => {
    for (const { scene, outcome } of candidates) {
      const { parameters: p } = scene;
      for (const sample of outcome.heat.asSet.samples.slice(1))
        expect(largestGrowth(p, sample, p.start, p.start + p.stroke) / sample.growth).toBeCloseTo(1, 3);
    }
  });

  it('is a screw with both ends fixed where a supported one whirls', () => {
    const long = recordedJob({ travel: 0.7, window: 5e-5, growthLimit: 0, rippleLimit: 0 });
    const said = (travel: number) => {
      const { D } = recordedDrives({ ...long, values: { ...long.values, travel } });
      return purchaseSentences({ ...long, values: { ...long.values, travel } }, [D], PRESETS).join();
    };
    // λ² allows 1.45 times the speed of a supported screw (Blevins: 3.9266 and 4.7300), so 1.2 times its length.
    expect(said(0.7)).toMatch(/: with both ends of its screw fixed it meets every requirement/);
    expect(said(0.9)).toBe('');
  });

  it('is a stretched screw where a warm one drifts, by no more than is needed', () => {
    const open = recordedJob({ window: 5e-5, rippleLimit: 0, growthLimit: 8e-6 });
    const said = (warming: number) => {
      const { D } = recordedDrives(open);
      const { ambient } = D.scene.parameters;
      const warm = withDay(D, (day) => ({
        ...day,
        screw: ambient + warming,
        growth: 11.7e-6 * 0.5 * warming,
      }));
      return purchaseSentences(open, [warm], PRESETS).join();
    };
    expect(said(4)).toContain('both ends of its screw fixed and the screw stretched for 3 K');
    expect(said(4)).not.toContain('5 K');
    expect(said(6)).toContain('both ends of its screw fixed and the screw stretched for 5 K');
    expect(said(12)).not.toContain('stretched');
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

import fc from 'fast-check';
import { expect, it } from 'vitest';
import { PRESETS } from '../../scenes/index.ts';
import { sizeCandidate } from '../../shared/sizing/sizeCandidate.ts';
import { candidateScene } from '../../shared/study/candidateScene.ts';
import { jobSentence } from '../../shared/study/jobSentence.ts';
import { anyStudy } from '../shared/study/arbitraries.ts';
import { COUNTS, SEED } from './counts.ts';

/** What a person must never read. */
const SENSELESS = /NaN|undefined|null|\[object/;

it('any legal job is sized for any legal candidates, in sentences with figures', () => {
  fc.assert(
    fc.property(anyStudy, ({ job, candidates }) => {
      expect(jobSentence(job, 'metric')).not.toMatch(SENSELESS);
      for (const choice of candidates) {
        const { figures, reasons, passes } = sizeCandidate(job, candidateScene(job, choice, PRESETS));
        expect(passes || reasons.length > 0).toBe(true);
        for (const { id, value, numbers, formula } of figures) {
          expect(value, id).not.toBeNaN();
          expect(`${numbers} ${formula}`, id).not.toMatch(SENSELESS);
        }
        for (const reason of reasons) expect(reason).not.toMatch(SENSELESS);
      }
    }),
    { numRuns: COUNTS.jobs, seed: SEED },
  );
});

import { expose } from 'comlink';
import { PRESETS } from '../../scenes/index.ts';
import { findFlips } from '../../shared/verdict/flips.ts';
import type { VerdictCommands } from '../../shared/verdict/judgement.ts';
import { judge } from '../../shared/verdict/verdict.ts';

/** The verdict worker: what would change the choice takes hundreds of sizings, which the page must not wait for. */
expose({
  verdict(job, candidates, onJudgement, onProgress) {
    onJudgement(judge(job, candidates));
    return findFlips(job, candidates, PRESETS, onProgress);
  },
} satisfies VerdictCommands);

import { PRESETS } from '../../scenes/index.ts';
import { setCurrentUnit } from '../../shared/core/currentUnit.ts';
import { setUnitSystem } from '../../shared/core/unitSystem.ts';
import { findFlips } from '../../shared/verdict/flips.ts';
import type { VerdictCommands } from '../../shared/verdict/judgement.ts';
import { judge } from '../../shared/verdict/verdict.ts';
import { serve } from './serve.ts';

/** The verdict worker: what would change the choice takes hundreds of sizings, which the page must not wait for. */
serve({
  verdict(job, candidates, units, onJudgement, onProgress) {
    setUnitSystem(units.system);
    setCurrentUnit(units.current);
    const judgement = judge(job, candidates);
    onJudgement(judgement);
    return { judgement, flips: findFlips(job, candidates, PRESETS, onProgress) };
  },
} satisfies VerdictCommands);

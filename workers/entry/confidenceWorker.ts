import type { ConfidenceCommands } from '../../shared/verdict/confidence/commands.ts';
import type { Confidence } from '../../shared/verdict/confidence/confidence.ts';
import { findConfidence } from '../../shared/verdict/confidence/findConfidence.ts';
import { moveOutcome } from '../study/moveOutcome.ts';
import { serve } from './serve.ts';

/** The worker that draws jobs within the ranges of their inputs: thousands of sizings, and moves that are simulated. */
serve({
  confidence(job, candidates, asked, onFound) {
    let whole: Confidence | null = null;
    for (const found of findConfidence(job, candidates, asked, moveOutcome)) {
      whole = found;
      onFound(found);
    }
    return whole;
  },
} satisfies ConfidenceCommands);

import type { ConfidenceCommands } from '../../shared/verdict/confidence/commands.ts';
import { findConfidence } from '../../shared/verdict/confidence/findConfidence.ts';
import { moveOutcome } from '../study/moveOutcome.ts';
import { serve } from './serve.ts';

/** The worker that draws jobs within the ranges of their inputs: thousands of sizings, and moves that are simulated. */
serve({
  confidence(job, candidates, asked, onFound) {
    for (const found of findConfidence(job, candidates, asked, moveOutcome)) onFound(found);
  },
} satisfies ConfidenceCommands);

import type { CandidateCommands } from '../../shared/study/outcome.ts';
import { evaluateCold, evaluateDay } from '../study/evaluateCandidate.ts';
import { serve } from './serve.ts';

/** The candidate worker: a candidate takes seconds, which neither the page nor the other candidates must wait for. */
serve({ evaluateDay, evaluateCold } satisfies CandidateCommands);

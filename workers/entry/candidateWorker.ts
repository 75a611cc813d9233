import { expose } from 'comlink';
import type { CandidateCommands } from '../../shared/study/outcome.ts';
import { evaluateCandidate } from '../study/evaluateCandidate.ts';

/** The candidate worker: a candidate takes seconds, which neither the page nor the other candidates must wait for. */
expose({ evaluate: evaluateCandidate } satisfies CandidateCommands);

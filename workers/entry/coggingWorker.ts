import type { CoggingCommands } from '../../shared/protocol/cogging.ts';
import { learnCogging } from '../accuracy/learnCogging.ts';
import { serve } from './serve.ts';

/** The cogging worker: a slow scan of the travel takes seconds, which neither the page nor the running axis must wait for. */
serve({ learn: learnCogging } satisfies CoggingCommands);

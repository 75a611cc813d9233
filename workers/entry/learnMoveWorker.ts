import type { LearnMoveCommands } from '../../shared/protocol/learnMove.ts';
import { learnMove } from '../accuracy/learnMove.ts';
import { serve } from './serve.ts';

/** The learning worker: a dozen repeats of a move take seconds, which neither the page nor the running axis must wait for. */
serve({ learn: learnMove } satisfies LearnMoveCommands);

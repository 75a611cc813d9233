import { expose } from 'comlink';
import type { LearnMoveCommands } from '../../shared/protocol/learnMove.ts';
import { learnMove } from '../accuracy/learnMove.ts';

/** The learning worker: a dozen repeats of a move take seconds, which neither the page nor the running axis must wait for. */
expose({ learn: learnMove } satisfies LearnMoveCommands);

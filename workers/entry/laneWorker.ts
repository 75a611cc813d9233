import { expose } from 'comlink';
import type { LaneCommands } from '../../shared/study/outcome.ts';
import { evaluateLane } from '../study/evaluateLane.ts';

/** The lane worker: a lane takes seconds, which neither the page nor the other lanes must wait for. */
expose({ evaluate: evaluateLane } satisfies LaneCommands);

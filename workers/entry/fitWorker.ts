import { expose } from 'comlink';
import type { FitCommands } from '../../shared/protocol/fit.ts';
import { fitTrace } from '../identify/fitModel.ts';

/** The fit worker: a long recording takes seconds, which neither the page nor the running axis must wait for. */
expose({ fit: fitTrace } satisfies FitCommands);

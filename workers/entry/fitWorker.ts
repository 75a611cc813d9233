import type { FitCommands } from '../../shared/protocol/fit.ts';
import { fitTrace } from '../identify/fitModel.ts';
import { serve } from './serve.ts';

/** The fit worker: a long recording takes seconds, which neither the page nor the running axis must wait for. */
serve({ fit: fitTrace } satisfies FitCommands);

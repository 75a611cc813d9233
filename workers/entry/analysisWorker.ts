import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { AnalysisCommands, LoopAnalysis, OperatingPoint } from '../../shared/protocol/analysis.ts';
import { analyse } from '../analysis/analyse.ts';
import { handOver } from './handOver.ts';
import { serve } from './serve.ts';

/** The analysis worker: beside the simulation, so that neither waits for the other. The page loads it as it opens: it is kept small. */
const commands: AnalysisCommands = {
  analyse(parameters: Parameters, point: OperatingPoint): LoopAnalysis {
    return handOver(analyse(parameters, point));
  },
};

serve(commands);

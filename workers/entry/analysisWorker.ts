import { expose, transfer } from 'comlink';
import type { AnalysisCommands, LoopAnalysis, OperatingPoint } from '../../shared/analysis.ts';
import type { Parameters } from '../../shared/parameters/table.ts';
import { analyse } from '../analysis/analyse.ts';

/** The analysis worker: beside the simulation, so that neither waits for the other. Results are handed over, not copied. */
const commands: AnalysisCommands = {
  analyse(parameters: Parameters, point: OperatingPoint): LoopAnalysis {
    const result = analyse(parameters, point);
    return transfer(result, buffersOf(result));
  },
};

function buffersOf(value: unknown): ArrayBuffer[] {
  if (value instanceof Float64Array) return [value.buffer as ArrayBuffer];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(buffersOf) : [];
}

expose(commands);

import { transfer } from 'comlink';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type {
  AnalysisCommands,
  LoopAnalysis,
  LoopExperiment,
  MeasuredLoop,
  OperatingPoint,
} from '../../shared/protocol/analysis.ts';
import type { MeasuredResponse, ResponseCommands, TakenResponse } from '../../shared/protocol/response.ts';
import { analyse } from '../analysis/analyse.ts';
import { measureChirp } from '../identify/chirp.ts';
import { takeResponse } from '../identify/measuredResponse.ts';
import { measureSteppedSine } from '../identify/steppedSine.ts';
import { serve } from './serve.ts';

/** Sweeps of a chirp that are averaged: the least from which coherence says much. */
const SWEEPS = 3;

/** The analysis worker: beside the simulation, so that neither waits for the other. Results are handed over, not copied. */
const commands: AnalysisCommands & ResponseCommands = {
  analyse(parameters: Parameters, point: OperatingPoint): LoopAnalysis {
    const result = analyse(parameters, point);
    return transfer(result, buffersOf(result));
  },

  measure({ kind, scene }: LoopExperiment, onProgress: (share: number) => void): MeasuredLoop {
    const result =
      kind === 'chirp' ? measureChirp(scene, SWEEPS, onProgress) : measureSteppedSine(scene, onProgress);
    return transfer(result, buffersOf(result));
  },

  takeResponse(parameters: Parameters, response: MeasuredResponse): TakenResponse {
    const result = takeResponse(parameters, response);
    return transfer(result, buffersOf(result.loop));
  },
};

function buffersOf(value: unknown): ArrayBuffer[] {
  if (value instanceof Float64Array) return [value.buffer as ArrayBuffer];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(buffersOf) : [];
}

serve(commands);

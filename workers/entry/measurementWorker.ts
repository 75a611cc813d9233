import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { LoopExperiment, MeasuredLoop, MeasurementCommands } from '../../shared/protocol/analysis.ts';
import type { MeasuredResponse, ResponseCommands, TakenResponse } from '../../shared/protocol/response.ts';
import { measureChirp } from '../identify/chirp.ts';
import { takeResponse } from '../identify/measuredResponse.ts';
import { measureSteppedSine } from '../identify/steppedSine.ts';
import { handOver } from './handOver.ts';
import { serve } from './serve.ts';

/** Sweeps of a chirp that are averaged: the least from which coherence says much. */
const SWEEPS = 3;

/** The measurement worker: the loop measured in the simulation, or taken from a recording of the real axis. */
const commands: MeasurementCommands & ResponseCommands = {
  measure({ kind, scene }: LoopExperiment, onProgress: (share: number) => void): MeasuredLoop {
    return handOver(
      kind === 'chirp' ? measureChirp(scene, SWEEPS, onProgress) : measureSteppedSine(scene, onProgress),
    );
  },

  takeResponse(parameters: Parameters, response: MeasuredResponse): TakenResponse {
    return handOver(takeResponse(parameters, response));
  },
};

serve(commands);

import type { ParameterName } from './parameters/table.ts';
import { isRecord } from './problem.ts';
import { toSI, type Unit } from './units.ts';

/**
 * Version 1 of the scene file kept a few parameters in the units of the drawing, with the unit in the name. Everything
 * else has been SI from the beginning and keeps its name.
 */
const VERSION_1: Readonly<Record<string, readonly [name: ParameterName, unit: Unit]>> = {
  strokeMm: ['stroke', 'mm'],
  startMm: ['start', 'mm'],
  speedMmS: ['speed', 'mm/s'],
  scanSpeedMmS: ['scanSpeed', 'mm/s'],
  dwellMs: ['dwell', 'ms'],
  stairStepNm: ['stairStep', 'nm'],
  polePitchMm: ['polePitch', 'mm'],
  leadMm: ['lead', 'mm'],
  backlashUm: ['backlash', 'µm'],
  travelMinMm: ['travelMin', 'mm'],
  travelMaxMm: ['travelMax', 'mm'],
  followingErrorLimitMm: ['followingErrorLimit', 'mm'],
  windowUm: ['window', 'µm'],
};

/**
 * The parameters of a file of any version under today's names, in SI, still unchecked. An old name beside its new
 * one is left as it is, for the check to refuse.
 */
export function migrateParameters(parameters: unknown, version: number): unknown {
  if (version > 1 || !isRecord(parameters)) return parameters;
  return Object.fromEntries(
    Object.entries(parameters).map(([name, value]) => {
      if (!Object.hasOwn(VERSION_1, name)) return [name, value];
      const [today, unit] = VERSION_1[name]!;
      if (Object.hasOwn(parameters, today)) return [name, value];
      return [today, typeof value === 'number' ? toSI(value, unit) : value];
    }),
  );
}

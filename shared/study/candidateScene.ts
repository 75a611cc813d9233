import { holdingForce } from '../axis/gravity.ts';
import { startGains } from '../axis/loop/startGains.ts';
import { inertiaDiameter, screwLength, shaftInertia } from '../axis/screw.ts';
import { defaultParameters, type ParameterChanges, type Parameters } from '../core/parameters/table.ts';
import { presetById, presetParameters } from '../core/preset.ts';
import type { Presets, Scene } from '../core/scene.ts';
import type { CandidateChoice } from './candidate.ts';
import type { Job } from './job.ts';
import { jobProgram } from './jobMotion.ts';
import { partChanges, partsText } from './parts.ts';

/** Travel that is left beyond the moves at each end, as a share of the travel. */
const SPARE = 0.05;
/** Screw beyond the travel at each end, m: half a nut, and what the bearings hold. */
const SCREW_END = 0.15;

/** The axis that does a job with a drive: untuned candidates have start gains. */
export function candidateScene(job: Job, candidate: CandidateChoice, presets: Presets): Scene {
  const preset = presetById(candidate.preset, presets);
  const drive = presetParameters(
    { ...preset, parameters: { ...preset.parameters, ...candidate.own } },
    candidate.motorCount,
  );
  const lead = drive.lead ?? 0;
  const untuned: Parameters = withScrewFor(job, {
    ...defaultParameters(),
    ...drive,
    ...partChanges({ lead }, candidate.parts),
    motorCount: candidate.motorCount,
    ...jobChanges(job),
  });
  const balanced = { ...untuned, counterbalance: job.values.counterbalanced * holdingForce(untuned) };
  return {
    id: null,
    preset: candidate.preset,
    title: title(candidate.motorCount, preset.title, partsText({ lead }, candidate.parts)),
    lookFor: job.title,
    driveType: preset.driveType,
    parameters: { ...balanced, ...startGains(balanced, preset.crossover), ...candidate.gains },
    moves: job.values.motion === 'move list' ? job.moves : [],
  };
}

/** '2 × Flat motor, iron-core; air bearing' */
function title(motors: number, drive: string, parts: string): string {
  const named = motors > 1 ? `${motors} × ${drive}` : drive;
  return parts === '' ? named : `${named}; ${parts}`;
}

/** What a job says of the parameters of an axis. */
function jobChanges(job: Job): ParameterChanges {
  const { values: v } = job;
  const half = (0.5 + SPARE) * v.travel;
  return {
    ...jobProgram(job),
    payload: v.payload,
    tableMass: v.tableMass,
    travelMin: -half,
    travelMax: half,
    inclination: v.inclination,
    process: v.process,
    processForce: v.processForce,
    processFrequency: v.processFrequency,
    processTime: v.processTime,
    window: v.window,
    scanSpeed: v.scanSpeed,
    busVoltage: v.busVoltage,
    ambient: v.ambient,
    windingStart: v.ambient,
    carrierStart: v.ambient,
    cooling: v.cooling,
    coolantTemperature: v.coolantTemperature,
  };
}

/** A screw as long as the travel asks for, with the inertia and the surface that it has then; without a screw as it is. */
function withScrewFor({ values }: Job, p: Parameters): Parameters {
  if (p.lead === 0) return p;
  const screwSpan = values.travel / 2 + SCREW_END;
  const [before, after] = [screwLength(p), 2 * screwSpan];
  return {
    ...p,
    screwSpan,
    rotorInertia:
      p.rotorInertia + shaftInertia(inertiaDiameter(p), after) - shaftInertia(inertiaDiameter(p), before),
    screwCapacity: (p.screwCapacity * after) / before,
    screwToAir: (p.screwToAir * after) / before,
  };
}

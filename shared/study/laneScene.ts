import { holdingForce } from '../gravity.ts';
import { kitParameters } from '../kit.ts';
import { defaultParameters, type ParameterChanges, type Parameters } from '../parameters/table.ts';
import type { Kit, Scene } from '../scene.ts';
import { screwDiameter, screwLength, shaftInertia } from '../screw.ts';
import { startGains } from '../startGains.ts';
import type { Job } from './job.ts';
import type { LaneChoice } from './lane.ts';
import { motionLimits } from './motionLimits.ts';

/** Travel that is left beyond the moves at each end, as a share of the travel. */
const SPARE = 0.05;
/** Screw beyond the travel at each end, m: half a nut, and what the bearings hold. */
const SCREW_END = 0.15;

/** The axis that does a job with a drive: untuned lanes have start gains. */
export function laneScene(job: Job, lane: LaneChoice, kits: Readonly<Record<string, Kit>>): Scene {
  const kit = kits[lane.kit]!;
  const drive = kitParameters({ ...kit, parameters: { ...kit.parameters, ...lane.own } }, lane.motorCount);
  const untuned: Parameters = withScrewFor(job, {
    ...defaultParameters(),
    ...drive,
    motorCount: lane.motorCount,
    ...jobChanges(job),
  });
  const balanced = { ...untuned, counterbalance: job.values.counterbalanced * holdingForce(untuned) };
  return {
    title: lane.motorCount > 1 ? `${lane.motorCount} × ${kit.title}` : kit.title,
    lookFor: job.title,
    form: kit.form,
    parameters: { ...balanced, ...startGains(balanced, kit.crossover), ...lane.gains },
    moves: job.values.motion === 'move list' ? job.moves : [],
  };
}

/** What a job says of the parameters of an axis. */
function jobChanges(job: Job): ParameterChanges {
  const { values: v } = job;
  const half = (0.5 + SPARE) * v.travel;
  return {
    program: v.motion === 'move list' ? 'list' : 'shuttle',
    // A list begins where it ends, so that every round is alike.
    start: v.motion === 'move list' ? (job.moves.at(-1)?.to ?? 0) : -v.stroke / 2,
    stroke: v.stroke,
    ...motionLimits(job),
    dwell: v.dwell,
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
      p.rotorInertia + shaftInertia(screwDiameter(p), after) - shaftInertia(screwDiameter(p), before),
    screwCapacity: (p.screwCapacity * after) / before,
    screwToAir: (p.screwToAir * after) / before,
  };
}

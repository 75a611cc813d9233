import { at } from '../../core/at.ts';
import type { ParameterChanges } from '../../core/parameters/table.ts';
import type { Scene } from '../../core/scene.ts';
import type { Job } from '../../study/job.ts';
import { type Ranges, UNCERTAIN_NAMES, type UncertainName, uncertain } from '../../study/ranges.ts';
import { sobolPoints } from '../../tolerance/sampling/sobol.ts';
import { spreadValue } from '../../tolerance/spread.ts';
import type { JudgedCandidate } from '../judgement.ts';

/** A job as it may turn out, and the drives as they may. */
export interface Draw {
  readonly job: Job;
  readonly drives: readonly DrawnDrive[];
}

interface DrawnDrive {
  /** For the calculation, and for the simulation, where the controller keeps the datasheet and the gains. */
  readonly calculated: Scene;
  readonly simulated: Scene;
  /** Of the price over that which was stated. */
  readonly price: number;
}

const SEED = 1;
const OF_DRIVE = UNCERTAIN_NAMES.filter((name) => uncertain(name).ofDrive);
const OF_ALL = UNCERTAIN_NAMES.filter((name) => !uncertain(name).ofDrive);

/** Jobs within the ranges by their number, from 0: Sobol points, the same for the same study. */
export function drawsOf(
  job: Job,
  candidates: readonly JudgedCandidate[],
  ranges: Ranges,
): (n: number) => Draw {
  const point = sobolPoints(OF_ALL.length + candidates.length * OF_DRIVE.length, SEED);
  return (n) => {
    const u = point(n);
    const factor = (name: UncertainName, dimension: number) =>
      spreadValue({ kind: 'per cent', share: ranges[name] }, 1, at(u, dimension));
    const common = OF_ALL.map((name, k) => [name, factor(name, k)] as const);
    const values = { ...job.values };
    for (const [name, by] of common) Object.assign(values, uncertain(name).job?.(values, by));
    return {
      job: { ...job, values },
      drives: candidates.map(({ scene }, place) => {
        const first = OF_ALL.length + place * OF_DRIVE.length;
        const own = OF_DRIVE.map((name, k) => [name, factor(name, first + k)] as const);
        const all = [...common, ...own];
        return {
          calculated: changed(scene, all, (name) => uncertain(name).axis),
          simulated: changed(scene, all, (name) => uncertain(name).simulated ?? uncertain(name).axis),
          price: own.find(([name]) => uncertain(name).isPrice)?.[1] ?? 1,
        };
      }),
    };
  };
}

function changed(
  scene: Scene,
  factors: readonly (readonly [UncertainName, number])[],
  of: (name: UncertainName) => ((p: Scene['parameters'], factor: number) => ParameterChanges) | undefined,
): Scene {
  const changes = factors.map(([name, factor]) => of(name)?.(scene.parameters, factor));
  return { ...scene, parameters: Object.assign({}, scene.parameters, ...changes) };
}

import { KITS } from '../../scenes/index.ts';
import { mostMotors } from '../../shared/kit.ts';
import type { ParameterChanges } from '../../shared/parameters/table.ts';
import { checkLane } from '../../shared/study/checkLane.ts';
import { DATASHEET_NAMES } from '../../shared/study/datasheet.ts';
import type { Job } from '../../shared/study/job.ts';
import type { LaneChoice, Study } from '../../shared/study/lane.ts';
import { laneScene } from '../../shared/study/laneScene.ts';
import { tuningOf } from '../../shared/tuning.ts';
import { randomJob } from './randomJob.ts';

/** A legal study: any job, one to four drives, some with values of their own, some tuned. */
export function randomStudy(random: () => number): Study {
  const job = randomJob(random);
  return { job, lanes: Array.from({ length: 1 + Math.floor(random() * 4) }, () => randomLane(random, job)) };
}

function randomLane(random: () => number, job: Job): LaneChoice {
  const kits = Object.keys(KITS);
  const kit = kits[Math.floor(random() * kits.length)]!;
  let lane: LaneChoice = {
    kit,
    motorCount: 1 + Math.floor(random() * mostMotors(KITS[kit]!)),
    own: {},
    gains: null,
  };
  for (const name of DATASHEET_NAMES) {
    const value = KITS[lane.kit]!.parameters[name];
    if (value === undefined || random() < 0.6) continue;
    const candidate = { ...lane, own: { ...lane.own, [name]: value * (0.7 + 0.6 * random()) } };
    if ('lane' in checkLane(candidate, job, KITS)) lane = candidate;
  }
  if (random() < 0.5) return lane;
  const tuning: ParameterChanges = tuningOf(laneScene(job, lane, KITS).parameters);
  return { ...lane, gains: { ...tuning, Kp: 1e5 * (1 + random()), notch1: random() < 0.5 } };
}

import { type Failure, failure } from '../jsonFile.ts';
import { shown } from '../problem.ts';
import type { Kit } from '../scene.ts';
import { checkJob } from './checkJob.ts';
import { checkLane, ofLane } from './checkLane.ts';
import { type LaneChoice, MOST_LANES, type Study } from './lane.ts';

export type StudyResult = { readonly study: Study } | Failure;

/** Checks a job and the lanes that shall do it. Total: a legal study, or what is wrong. */
export function checkStudy(
  { job: jobInput, lanes: laneInputs }: { readonly job: unknown; readonly lanes: unknown },
  kits: Readonly<Record<string, Kit>>,
): StudyResult {
  const { job, problems } = checkJob(jobInput);
  if (!job) return { problems };
  if (!Array.isArray(laneInputs)) {
    return failure('lanes', laneInputs, `lanes: ${shown(laneInputs)} is not a list of lanes.`);
  }
  if (laneInputs.length < 1 || laneInputs.length > MOST_LANES) {
    return failure(
      'lanes',
      laneInputs.length,
      `lanes: there are ${laneInputs.length}. Give one to ${MOST_LANES}.`,
    );
  }
  const lanes: LaneChoice[] = [];
  for (const [index, input] of laneInputs.entries()) {
    const checked = checkLane(input, job, kits);
    if ('problems' in checked) return { problems: checked.problems.map((each) => ofLane(index, each)) };
    lanes.push(checked.lane);
  }
  return { study: { job, lanes } };
}

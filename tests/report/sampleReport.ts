import { KITS } from '../../scenes/index.ts';
import { sizeLane } from '../../shared/sizing/sizeLane.ts';
import type { Job } from '../../shared/study/job.ts';
import { writeStudy } from '../../shared/study/studyFile.ts';
import { writeStudyLink } from '../../shared/study/studyLink.ts';
import { verdict } from '../../shared/verdict/verdict.ts';
import type { ReportInput } from '../../src/report/reportInput.ts';
import { sampleJob, sampleLanes, sampleState } from '../study/sampleOutcome.ts';

/** A picture of one white pixel. */
export const PIXEL =
  'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mP8/x8AAwMCAO+ip1sAAAAASUVORK5CYII=';

export function sampleReport(changes: Partial<ReportInput> = {}, job: Job = sampleJob()): ReportInput {
  const { study, units } = sampleState(job);
  // By calculation as it really is; what simulation found is made up.
  const lanes = sampleLanes(job).map((lane) => ({ ...lane, sizing: sizeLane(job, lane.scene) }));
  return {
    study,
    units,
    lanes,
    verdict: verdict(job, lanes, KITS),
    pictures: { stage: PIXEL },
    link: `https://waybench.example/#${writeStudyLink(study)}`,
    studyFile: writeStudy(study),
    version: '0.0.0',
    printed: '1 May',
    ...changes,
  };
}

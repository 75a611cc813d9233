import { PRESETS } from '../../../scenes/index.ts';
import { writeStudy } from '../../../shared/files/studyFile.ts';
import { writeStudyLink } from '../../../shared/files/studyLink.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import type { Job } from '../../../shared/study/job.ts';
import { verdict } from '../../../shared/verdict/verdict.ts';
import type { ReportInput } from '../../../src/paper/report/reportInput.ts';
import { sampleCandidates, sampleJob, sampleState } from '../../shared/study/sampleOutcome.ts';

/** A picture of one white pixel. */
export const PIXEL =
  'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mP8/x8AAwMCAO+ip1sAAAAASUVORK5CYII=';

export function sampleReport(changes: Partial<ReportInput> = {}, job: Job = sampleJob()): ReportInput {
  const { study, units } = sampleState(job);
  // By calculation as it really is; what simulation found is made up.
  const candidates = sampleCandidates(job).map((candidate) => ({
    ...candidate,
    sizing: sizeCandidate(job, candidate.scene),
  }));
  return {
    study,
    units,
    candidates,
    verdict: verdict(job, candidates, PRESETS),
    pictures: { stage: PIXEL },
    link: `https://waybench.example/#${writeStudyLink(study)}`,
    studyFile: writeStudy(study),
    version: '0.0.0',
    printed: '1 May',
    ...changes,
  };
}

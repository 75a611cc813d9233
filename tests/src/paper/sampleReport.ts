import { PRESETS } from '../../../scenes/index.ts';
import { writeStudy } from '../../../shared/files/studyFile.ts';
import { writeStudyLink } from '../../../shared/files/studyLink.ts';
import type { Job } from '../../../shared/study/job.ts';
import { verdict } from '../../../shared/verdict/verdict.ts';
import type { ReportInput } from '../../../src/paper/report/reportInput.ts';
import { recordedCandidates, recordedJob, recordedState } from '../../shared/study/recordedStudy.ts';

/** A picture of one white pixel. */
export const PIXEL =
  'data:image/png;base64,iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAQAAAC1HAwCAAAAC0lEQVR42mP8/x8AAwMCAO+ip1sAAAAASUVORK5CYII=';

export function sampleReport(changes: Partial<ReportInput> = {}, job: Job = recordedJob()): ReportInput {
  const { study, units } = recordedState(job);
  const candidates = recordedCandidates(job);
  return {
    study,
    units,
    candidates,
    verdict: verdict(job, candidates, PRESETS),
    confidence: null,
    pictures: { stage: PIXEL },
    link: `https://waybench.example/#${writeStudyLink(study)}`,
    studyFile: writeStudy(study),
    version: '0.0.0',
    printed: '1 May',
    ...changes,
  };
}

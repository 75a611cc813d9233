import { PRESETS } from '../../scenes/index.ts';
import { WAYBENCH_VERSION } from '../../shared/core/version.ts';
import { writeStudy } from '../../shared/files/studyFile.ts';
import { writeStudyLink } from '../../shared/files/studyLink.ts';
import { verdict } from '../../shared/verdict/verdict.ts';
import { openReport } from '../paper/report/openReport.ts';
import { isSimulated } from '../studyState/simulatedCandidate.ts';
import type { StudyState } from '../studyState/state.ts';

/** Shows the report of a study as it stands; `picture` is a data URL of the stage. */
export function showReport({ study, units, candidates }: StudyState, picture: string | null): void {
  const simulated = candidates.filter(isSimulated);
  openReport(document.body, {
    study,
    units,
    candidates,
    verdict: verdict(study.job, simulated, PRESETS),
    pictures: picture ? { stage: picture } : {},
    link: `${location.href.replace(/#.*$/, '')}#${writeStudyLink(study)}`,
    studyFile: writeStudy(study),
    version: WAYBENCH_VERSION,
  });
}

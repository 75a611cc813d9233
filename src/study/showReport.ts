import { KITS } from '../../scenes/index.ts';
import { writeStudy } from '../../shared/study/studyFile.ts';
import { writeStudyLink } from '../../shared/study/studyLink.ts';
import { verdict } from '../../shared/verdict/verdict.ts';
import { WAYBENCH_VERSION } from '../../shared/version.ts';
import { openReport } from '../report/openReport.ts';
import { isSimulated } from './simulatedLane.ts';
import type { StudyState } from './state.ts';

/** Shows the report of a study as it stands; `picture` is a data URL of the stage. */
export function showReport({ study, units, lanes }: StudyState, picture: string | null): void {
  const simulated = lanes.filter(isSimulated);
  openReport(document.body, {
    study,
    units,
    lanes,
    verdict: verdict(study.job, simulated, KITS),
    pictures: picture ? { stage: picture } : {},
    link: `${location.href.replace(/#.*$/, '')}#${writeStudyLink(study)}`,
    studyFile: writeStudy(study),
    version: WAYBENCH_VERSION,
  });
}

import { VERSION_TEXT } from '../../shared/core/version.ts';
import { writeStudy } from '../../shared/files/studyFile.ts';
import { writeStudyLink } from '../../shared/files/studyLink.ts';
import type { Verdict } from '../../shared/verdict/judgement.ts';
import { openReport } from '../paper/report/openReport.ts';
import type { StudyState } from '../studyState/state.ts';

/** Shows the report of a study with the verdict on it; `picture` is a data URL of the stage. */
export function showReport(
  { study, units, candidates, confidence }: StudyState,
  verdict: Verdict,
  picture: string | null,
): void {
  openReport({
    study,
    units,
    candidates,
    verdict,
    confidence: confidence.found,
    pictures: picture ? { stage: picture } : {},
    link: `${location.href.replace(/#.*$/, '')}#${writeStudyLink(study)}`,
    studyFile: writeStudy(study),
    version: VERSION_TEXT,
  });
}

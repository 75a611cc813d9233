import { inSystem } from '../../../shared/core/unitSystem.ts';
import { isSimulated } from '../../studyState/simulatedCandidate.ts';
import { markup } from '../../ui/markup.ts';
import { paperPage } from '../paperPage.ts';
import { flipSection, ruleSection, sideBySideSection, standoutSection } from './answerSection.ts';
import { candidateSection } from './candidateSection.ts';
import { assumptionSection, cautionSection, reproductionSection } from './closing.ts';
import { drivesSection } from './driveSection.ts';
import { heatOfAll } from './heatSection.ts';
import { jobSection } from './jobSection.ts';
import { checkInput, type ReportInput } from './reportInput.ts';
import { REPORT_STYLE } from './reportStyle.ts';
import { rippleOfAll } from './rippleSection.ts';
import { sizingOfAll } from './sizingSection.ts';
import { summarySection } from './summarySection.ts';
import { tuningOfAll } from './tuningSection.ts';

/**
 * The report of a study as a document of its own, drawings, pictures and the study inside, to read, to print or to give away.
 * Pure: the same input gives the same text. @throws RangeError if a picture or the link is of a kind that is not allowed.
 */
export function reportHtml(input: ReportInput): string {
  checkInput(input);
  return inSystem(input.units, () => pageOf(input));
}

function pageOf(input: ReportInput): string {
  const { study, units, candidates, verdict, version, printed = '' } = input;
  const { job } = study;
  const judged = candidates.filter(isSimulated);
  const content = markup`<h1>Which drive?</h1>
<p class="title">${job.title}</p>
<p class="made"><span>Simulated with Waybench ${version}</span><span>${printed}</span></p>
${summarySection(input, judged)}
${jobSection(job, units)}
${ruleSection(verdict)}
${sideBySideSection(verdict, judged)}
${standoutSection(verdict)}
${flipSection(verdict)}
${rippleOfAll(judged, job)}
${heatOfAll(judged, job)}
${drivesSection(candidates)}
${cautionSection()}
${reproductionSection(input)}
<label class="appendix-choice screen-only"><input type="checkbox" id="with-appendix"> Show and print the appendix: calculations and tests of every candidate, assumptions, definitions</label>
<div class="appendix">
<h1>Appendix</h1>
${sizingOfAll(candidates)}
${tuningOfAll(judged, job)}
${candidates.map((candidate) => candidateSection(candidate, input))}
${assumptionSection(input)}
</div>`;
  return paperPage(`Which drive? ${job.title}`, REPORT_STYLE, content);
}

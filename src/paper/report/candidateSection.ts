import { isSimulated } from '../../studyState/simulatedCandidate.ts';
import type { CandidateState } from '../../studyState/state.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { accuracySection } from './accuracySection.ts';
import { energySection } from './energySection.ts';
import { heatSection } from './heatSection.ts';
import { pictureOf } from './picture.ts';
import type { ReportInput } from './reportInput.ts';
import { sizingSection } from './sizingSection.ts';

/** Everything that is known of one candidate. */
export function candidateSection(
  candidate: CandidateState,
  { study: { job }, candidates, pictures }: ReportInput,
): Markup {
  const { letter, title, error } = candidate;
  const judged = candidates.filter(isSimulated);
  return markup`<section class="candidate"><h2>Candidate ${letter}: ${title}</h2>
${pictureOf(pictures[letter], `Candidate ${letter}, ${title}`)}
${sizingSection(candidate, candidates)}
${
  isSimulated(candidate)
    ? [
        heatSection(candidate, job, judged),
        accuracySection(candidate, job, judged),
        energySection(candidate, job, judged),
      ]
    : markup`<p>This candidate was not simulated. ${error ?? ''}</p>`
}</section>`;
}

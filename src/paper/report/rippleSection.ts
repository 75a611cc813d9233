import type { Job } from '../../../shared/study/job.ts';
import { testOf } from '../../../shared/verdict/read.ts';
import { rippleChart } from '../../drawings/ripple.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { figure } from '../paperParts.ts';
import { HALF } from './halfSize.ts';

/** Speed ripple of every candidate on one scale, where the job asks for a scan. */
export function rippleOfAll(candidates: readonly SimulatedCandidate[], { values }: Job): Markup {
  if (values.rippleLimit === 0) return markup``;
  const tested = candidates.flatMap((candidate) => {
    const test = testOf(candidate, 'ripple');
    return test === null ? [] : { candidate, test };
  });
  if (tested.length === 0) return markup``;
  const all = tested.map(({ test }) => test);
  const charts = tested.map(({ candidate: { letter, title }, test }) =>
    figure(`${letter}: ${title}`, rippleChart(test, values.rippleLimit, all, HALF)),
  );
  return markup`<section><h2>Speed ripple of the scan</h2>
<div class="drawings">${charts}</div></section>`;
}

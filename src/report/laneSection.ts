import { type Markup, markup } from '../drawing/markup.ts';
import { isSimulated } from '../study/simulatedLane.ts';
import type { LaneState } from '../study/state.ts';
import { accuracySection } from './accuracySection.ts';
import { energySection } from './energySection.ts';
import { heatSection } from './heatSection.ts';
import { pictureOf } from './picture.ts';
import type { ReportInput } from './reportInput.ts';
import { sizingSection } from './sizingSection.ts';

/** Everything that is known of one lane. */
export function laneSection(lane: LaneState, { study: { job }, lanes, pictures }: ReportInput): Markup {
  const { letter, title, trouble } = lane;
  const judged = lanes.filter(isSimulated);
  return markup`<section class="lane"><h2>Lane ${letter}: ${title}</h2>
${pictureOf(pictures[letter], `Lane ${letter}, ${title}`)}
${sizingSection(lane, lanes)}
${
  isSimulated(lane)
    ? [heatSection(lane, judged), accuracySection(lane, job, judged), energySection(lane, job, judged)]
    : markup`<p>This lane was not simulated. ${trouble ?? ''}</p>`
}</section>`;
}

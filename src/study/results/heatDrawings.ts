import { onPage, sentenceText } from '../../../shared/core/sentence.ts';
import { HEAT_FIGURES } from '../../../shared/figures/heatFigures.ts';
import { coolingSentences } from '../../../shared/figures/timeLapseText.ts';
import type { Course } from '../../../shared/protocol/timeLapse.ts';
import type { JobValues } from '../../../shared/study/job.ts';
import { driftChart } from '../../drawings/drift.ts';
import { growthChart } from '../../drawings/growth.ts';
import { temperaturesChart } from '../../drawings/temperatures.ts';
import type { Drawing } from '../../plot/drawing.ts';
import { svg } from '../../plot/svg.ts';
import { candidateName } from '../../sideBySide/candidateName.ts';
import { temperatureData } from '../../studyState/candidateCourses.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { candidateFigure } from '../parts/candidateFigure.ts';
import { columns, columnsFor } from '../parts/columns.ts';

/** A day of heat as it is looked at. */
export interface HeatLook {
  readonly seen: readonly { readonly candidate: SimulatedCandidate; readonly course: Course }[];
  readonly job: JobValues;
  readonly withCoolant: boolean;
  /** What strong and faint lines are: 'with coolant'. */
  readonly strong: string;
  readonly faint: string;
  /** The growth around the limit alone. */
  readonly isZoomed: boolean;
  /** At which figures are read, s. */
  readonly time: number;
}

/** Narrowest column of a chart, and the height of all of them, px of a drawing. */
const MIN = 315;
const MIN_PAIR = 440;
const HEIGHT = 250;
/** As many times what is allowed is shown when the scale keeps near to it. */
const GROWTH_ZOOM = 3;

/** Temperatures of each candidate, growth and force of all, and whether a coolant is needed. `width` in px of a drawing. */
export function heatDrawings(look: HeatLook, width: number): Markup {
  const { seen, strong, faint } = look;
  const candidates = seen.map(({ candidate }) => candidate);
  return markup`<p class="results-words">Strong lines: ${strong}. Faint lines: ${faint}. All drives share one scale. The vertical line marks the time of the figures below; a cross marks a trip.</p>
${temperatures(look, candidates, width)}
${growthAndForce(look, width)}
<h3>Is a coolant needed?</h3>
<dl class="candidate-answers">${candidates.map(
    (candidate) =>
      markup`<dt>${candidateName(candidate)}</dt><dd><ul class="candidate-sentences">${answers(candidate).map((each) => markup`<li>${each}</li>`)}</ul></dd>`,
  )}</dl>`;
}

function temperatures(
  { withCoolant, time }: HeatLook,
  candidates: readonly SimulatedCandidate[],
  width: number,
): Markup {
  const dataOf = (candidate: SimulatedCandidate) => temperatureData(candidate, withCoolant);
  const all = candidates.map(dataOf);
  return columns(
    columnsFor(candidates.length, width, MIN),
    width,
    candidates.map((candidate) => (each) => {
      const size = { width: each, height: HEIGHT };
      return candidateFigure(candidate, temperaturesChart(dataOf(candidate), all, size, time));
    }),
  );
}

function growthAndForce({ seen, job, isZoomed, time }: HeatLook, width: number): Markup {
  const courses = seen.map(({ candidate: { letter }, course }) => ({ letter, course }));
  const zoom = isZoomed && job.growthLimit > 0 ? GROWTH_ZOOM * job.growthLimit : undefined;
  const drawn = (title: string, chart: Drawing) =>
    markup`<figure><figcaption>${title}</figcaption>${svg(chart)}</figure>`;
  const sized = (each: number) => ({ width: each, height: HEIGHT });
  return columns(width > 2 * MIN_PAIR ? 2 : 1, width, [
    (each) =>
      drawn(HEAT_FIGURES.growth.label, growthChart(courses, job.growthLimit, sized(each), time, zoom)),
    (each) => drawn(HEAT_FIGURES.forcePerAmp.label, driftChart(courses, sized(each), time)),
  ]);
}

/** Whether the duty can be done, and what cooling has to do, in sentences. */
function answers({ outcome: { heat }, scene }: SimulatedCandidate): string[] {
  const { cooling, duty } = heat;
  const needs =
    cooling === null ? [['The cycle trips even when cold.']] : coolingSentences(scene.parameters, cooling);
  // Last comes what was asked first.
  return [...needs.reverse(), ...duty.reasons].map((sentence) => sentenceText(sentence, onPage()));
}

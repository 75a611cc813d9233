import { HEAT_FIGURES } from '../../../shared/figures/heatFigures.ts';
import { coolingSentences, durationText } from '../../../shared/figures/timeLapseText.ts';
import type { Course, HeatState, LapseSample } from '../../../shared/protocol/timeLapse.ts';
import { driftChart } from '../../drawings/drift.ts';
import { growthChart } from '../../drawings/growth.ts';
import { temperaturesChart } from '../../drawings/temperatures.ts';
import { svg } from '../../plot/svg.ts';
import { candidateName } from '../../sideBySide/candidateName.ts';
import { courseOf, temperatureData } from '../../studyState/candidateCourses.ts';
import { watchResults } from '../../studyState/changes.ts';
import { isSimulated, type SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import type { Pane, StudyActions, StudyState } from '../../studyState/state.ts';
import { eventRows, heatRows } from '../../studyState/tables/heatRows.ts';
import { ungrouped } from '../../studyState/tables/table.ts';
import { element, setText } from '../../ui/dom.ts';
import { labelled } from '../../ui/labelled.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { createSegmented } from '../../ui/segmented.ts';
import { candidateFigure } from '../parts/candidateFigure.ts';
import { columns, columnsFor } from '../parts/columns.ts';
import { drawnPart, unitNote } from '../parts/drawnPart.ts';
import { FigureTableView } from '../parts/figureTable.ts';
import { createMissingCandidates } from '../parts/missingCandidates.ts';
import '../parts/parts.css';

/** Narrowest column of a chart, and the height of all of them, px of a drawing. */
const MIN = 315;
const HEIGHT = 250;

const COOLINGS = ['in the air of the room', 'with coolant'] as const;
const GROWTHS = ['whole', 'near what is allowed'] as const;

/** Hours of duty: what heat does to each drive, and what cooling has to do about it. */
export function createHeatPane(actions: StudyActions): Pane {
  let state: StudyState | null = null;
  let jobCooling: boolean | null = null;
  const isNew = watchResults();
  const missing = createMissingCandidates(actions);
  const cooling = createSegmented('Cooling of the duty', COOLINGS, refresh);
  const growth = createSegmented('Scale of the growth', GROWTHS, refresh);
  const slider = element('input', { type: 'range', min: 0, max: 1, step: 60, oninput: refresh });
  const time = element('output');
  const controls = element(
    'div',
    { class: 'results-controls' },
    labelled('Duty', cooling),
    labelled('Growth', growth),
    element('label', { class: 'results-control results-time' }, 'Read at', slider, time),
  );
  const part = drawnPart(element('div'), (width) => (state ? drawings(state, width) : markup``));
  const tables = { now: new FigureTableView(), events: new FigureTableView(), steady: new FigureTableView() };

  function refresh(): void {
    const text = durationText(Number(slider.value));
    slider.setAttribute('aria-valuetext', text);
    setText(time, text);
    part.refresh();
    if (state) showTables(state);
  }

  /** Of each candidate that has been simulated, in the air of the room or with the coolant, whichever is looked at. */
  function coursesOf({ candidates }: StudyState) {
    const withCoolant = cooling.value === 'with coolant';
    return candidates
      .filter(isSimulated)
      .map((candidate) => ({ candidate, course: courseOf(candidate, withCoolant) }));
  }

  function showTables(shown: StudyState): void {
    const { study, units } = shown;
    const found = coursesOf(shown);
    if (found.length === 0) {
      for (const table of Object.values(tables)) table.hide();
      return;
    }
    const candidates = found.map(({ candidate }) => candidate);
    const courses = found.map(({ course }) => course);
    const at = Number(slider.value);
    const rows = (prefix: string, stateOf: (course: Course) => HeatState | null, absent: string) =>
      heatRows(
        prefix,
        found.map(({ candidate, course }) => ({
          state: stateOf(course),
          absent: course.trip ? 'trips' : absent,
          hasScrew: candidate.scene.parameters.lead > 0,
        })),
        study.job.values,
        units,
      );
    tables.now.show(
      `After ${durationText(at)} ${cooling.value}`,
      ungrouped(
        candidates,
        rows('now', (course) => sampleAt(course, at), 'trips'),
      ),
    );
    tables.events.show(
      `In ${durationText(longest(courses))} ${cooling.value}`,
      ungrouped(candidates, eventRows(courses)),
    );
    tables.steady.show(
      `In steady state ${cooling.value}`,
      ungrouped(
        candidates,
        rows('steady', ({ steady }) => steady, 'no steady state'),
      ),
    );
  }

  function drawings(shown: StudyState, width: number): Markup {
    const { study, units } = shown;
    const found = coursesOf(shown);
    if (found.length === 0) return markup``;
    const done = found.map(({ candidate }) => candidate);
    const { values } = study.job;
    const withCoolant = cooling.value === 'with coolant';
    const at = Number(slider.value);
    const ofCandidates = found.map(({ candidate: { letter }, course }) => ({ letter, course }));
    const data = done.map((candidate) => temperatureData(candidate, withCoolant));
    const beside = columnsFor(done.length, width, MIN);
    const zoom = growth.value === 'whole' ? undefined : GROWTH_ZOOM * values.growthLimit;
    const pair = width > 2 * 440 ? 2 : 1;
    return markup`<p class="results-words">Strong lines: ${cooling.value}. Faint lines: ${COOLINGS[withCoolant ? 0 : 1]}. All drives are drawn to one scale. The upright line is the time at which the figures below are read; a cross is where a drive stops itself.${unitNote(units)}</p>
${columns(
  beside,
  width,
  done.map(
    (candidate) => (each) =>
      candidateFigure(
        candidate,
        temperaturesChart(temperatureData(candidate, withCoolant), data, { width: each, height: HEIGHT }, at),
      ),
  ),
)}
${columns(pair, width, [
  (each) =>
    markup`<figure><figcaption>${HEAT_FIGURES.growth.label}</figcaption>${svg(growthChart(ofCandidates, values.growthLimit, { width: each, height: HEIGHT }, at, zoom))}</figure>`,
  (each) =>
    markup`<figure><figcaption>${HEAT_FIGURES.forcePerAmp.label}</figcaption>${svg(driftChart(ofCandidates, { width: each, height: HEIGHT }, at))}</figure>`,
])}
<h3>Is a chiller needed?</h3>
<dl class="candidate-answers">${done.map(
      (candidate) =>
        markup`<dt>${candidateName(candidate)}</dt><dd><ul class="candidate-sentences">${answers(candidate).map((each) => markup`<li>${each}</li>`)}</ul></dd>`,
    )}</dl>`;
  }

  return {
    element: element(
      'section',
      { class: 'results', 'aria-label': 'Heat' },
      element('h2', {}, 'A day of heat'),
      missing.element,
      controls,
      part.element,
      ...Object.values(tables).map((table) => table.element),
    ),
    show(next) {
      state = next;
      missing.show(next);
      if (!isNew(next)) return;
      const done = next.candidates.filter(isSimulated);
      controls.hidden = done.length === 0;
      const end = longest(done.map(({ outcome }) => outcome.heat.asSet));
      const wasAtEnd = Number(slider.value) >= Number(slider.max) || slider.max === '1';
      slider.max = String(end);
      if (wasAtEnd) slider.value = String(end);
      const { cooling: ofJob } = next.study.job.values;
      if (ofJob !== jobCooling) cooling.choose(COOLINGS[ofJob ? 1 : 0]);
      jobCooling = ofJob;
      refresh();
    },
  };
}

/** As many times what is allowed is shown when the scale keeps near to it. */
const GROWTH_ZOOM = 3;

/** Whether the duty can be done, and what cooling has to do, in sentences. */
function answers({ outcome: { heat }, scene }: SimulatedCandidate): string[] {
  const { cooling, duty } = heat;
  const needs =
    cooling === null ? ['The cycle cannot even be run cold.'] : coolingSentences(scene.parameters, cooling);
  // Last comes what was asked first.
  return [...needs.reverse(), ...duty.reasons];
}

/** The last sample not after a time; null once the drive has stopped. */
function sampleAt({ samples, trip }: Course, time: number): LapseSample | null {
  if (trip && time > trip.time) return null;
  return samples.filter((sample) => sample.time <= time).at(-1) ?? null;
}

function longest(courses: readonly Course[]): number {
  return Math.max(0, ...courses.map(({ samples }) => samples.at(-1)?.time ?? 0));
}

import type { Course, LapseSample } from '../../shared/timeLapse.ts';
import { coolingSentences, durationText } from '../../shared/timeLapseText.ts';
import { element, setText } from '../app/dom.ts';
import { createSegmented } from '../app/segmented.ts';
import { driftChart } from '../drawing/charts/drift.ts';
import { growthChart } from '../drawing/charts/growth.ts';
import { temperaturesChart } from '../drawing/charts/temperatures.ts';
import { type Markup, markup } from '../drawing/markup.ts';
import { laneName } from '../lanes/laneName.ts';
import { watchResults } from './changes.ts';
import { columns, columnsFor } from './columns.ts';
import { drawnPart, unitNote } from './drawnPart.ts';
import { eventRows, stateRows } from './heatRows.ts';
import { labelled } from './labelled.ts';
import { courseOf, temperatureData } from './laneCourses.ts';
import { laneFigure, laneTable } from './laneTable.ts';
import { createMissingLanes } from './missingLanes.ts';
import { isSimulated, type SimulatedLane } from './simulatedLane.ts';
import type { Pane, StudyActions, StudyState } from './state.ts';
import './results.css';

/** Narrowest column of a chart, and the height of all of them, px of a drawing. */
const LEAST = 315;
const HEIGHT = 250;

const COOLINGS = ['in the air of the room', 'with coolant'] as const;
const GROWTHS = ['whole', 'near what is allowed'] as const;

/** Hours of duty: what heat does to each drive, and what cooling has to do about it. */
export function createHeatPane(actions: StudyActions): Pane {
  let state: StudyState | null = null;
  let jobCooling: boolean | null = null;
  const isNew = watchResults();
  const missing = createMissingLanes(actions);
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
  const part = drawnPart(element('div'), (width) => (state ? content(state, width) : markup``));

  function refresh(): void {
    const text = durationText(Number(slider.value));
    slider.setAttribute('aria-valuetext', text);
    setText(time, text);
    part.refresh();
  }

  function content({ study, lanes, units }: StudyState, width: number): Markup {
    const done = lanes.filter(isSimulated);
    if (done.length === 0) return markup``;
    const { values } = study.job;
    const withCoolant = cooling.value === 'with coolant';
    const at = Number(slider.value);
    const courses = done.map((lane) => courseOf(lane, withCoolant));
    const ofLanes = done.map(({ letter }, k) => ({ letter, course: courses[k]! }));
    const data = done.map((lane) => temperatureData(lane, withCoolant));
    const beside = columnsFor(done.length, width, LEAST);
    const zoom = growth.value === 'whole' ? undefined : GROWTH_ZOOM * values.growthLimit;
    const pair = width > 2 * 440 ? 2 : 1;
    return markup`<p class="results-words">Strong lines: ${cooling.value}. Faint lines: ${COOLINGS[withCoolant ? 0 : 1]}. All drives are drawn to one scale. The upright line is the time at which the figures below are read; a cross is where a drive stops itself.${unitNote(units)}</p>
${columns(
  beside,
  width,
  done.map(
    (lane, k) => (each) =>
      laneFigure(lane, temperaturesChart(data[k]!, data, { width: each, height: HEIGHT }, at)),
  ),
)}
${columns(pair, width, [
  (each) =>
    markup`<figure><figcaption>Growth at the tool</figcaption>${growthChart(ofLanes, values.growthLimit, { width: each, height: HEIGHT }, at, zoom)}</figure>`,
  (each) =>
    markup`<figure><figcaption>Force per ampere, against cold</figcaption>${driftChart(ofLanes, { width: each, height: HEIGHT }, at)}</figure>`,
])}
<h3>Is a chiller needed?</h3>
<dl class="lane-answers">${done.map(
      (lane) =>
        markup`<dt>${laneName(lane)}</dt><dd><ul class="lane-sentences">${answers(lane).map((each) => markup`<li>${each}</li>`)}</ul></dd>`,
    )}</dl>
${laneTable(
  `After ${durationText(at)} ${cooling.value}`,
  done,
  stateRows(
    'now',
    done,
    courses.map((course) => sampleAt(course, at)),
    () => 'trips',
    values,
    units,
  ),
)}
${laneTable(`In ${durationText(longest(courses))} ${cooling.value}`, done, eventRows(courses))}
${laneTable(
  `In the long run ${cooling.value}`,
  done,
  stateRows(
    'steady',
    done,
    courses.map(({ steady }) => steady),
    (k) => (courses[k]!.trip ? 'trips' : 'no end to it'),
    values,
    units,
  ),
)}`;
  }

  return {
    element: element(
      'section',
      { class: 'results', 'aria-label': 'Heat' },
      element('h2', {}, 'A day of heat'),
      missing.element,
      controls,
      part.element,
    ),
    show(next) {
      state = next;
      missing.show(next);
      if (!isNew(next)) return;
      const done = next.lanes.filter(isSimulated);
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
function answers({ outcome: { heat }, scene }: SimulatedLane): string[] {
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

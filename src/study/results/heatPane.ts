import { durationText } from '../../../shared/figures/timeLapseText.ts';
import type { Course, HeatState, LapseSample } from '../../../shared/protocol/timeLapse.ts';
import { courseOf } from '../../studyState/candidateCourses.ts';
import { watchResults } from '../../studyState/changes.ts';
import { isSimulated } from '../../studyState/simulatedCandidate.ts';
import type { Pane, StudyActions, StudyState } from '../../studyState/state.ts';
import { eventRows, heatRows } from '../../studyState/tables/heatRows.ts';
import { ungrouped } from '../../studyState/tables/table.ts';
import { element, setText } from '../../ui/dom.ts';
import { labelled } from '../../ui/labelled.ts';
import { markup } from '../../ui/markup.ts';
import { createSegmented } from '../../ui/segmented.ts';
import { type DrawnPart, drawnPart } from '../parts/drawnPart.ts';
import { FigureTableView } from '../parts/figureTable.ts';
import { createMissingCandidates } from '../parts/missingCandidates.ts';
import { type HeatLook, heatDrawings } from './heatDrawings.ts';
import '../parts/parts.css';

const COOLINGS = ['in room air', 'with coolant'] as const;
const GROWTHS = ['whole', 'around the limit'] as const;

/** Hours of duty: what heat does to each drive, and what cooling has to do about it. */
export class HeatPane implements Pane {
  readonly element: HTMLElement;
  readonly #isNew = watchResults();
  readonly #missing;
  readonly #cooling = createSegmented('Cooling of the duty', COOLINGS, () => this.#refresh());
  readonly #growth = createSegmented('Scale of the growth', GROWTHS, () => this.#refresh());
  readonly #slider = element('input', {
    type: 'range',
    min: 0,
    max: 1,
    step: 60,
    oninput: () => this.#refresh(),
  });
  readonly #time = element('output');
  readonly #controls: HTMLElement;
  readonly #drawings: DrawnPart;
  readonly #now = new FigureTableView();
  readonly #events = new FigureTableView();
  readonly #steady = new FigureTableView();
  #state: StudyState | null = null;
  #jobCooling: boolean | null = null;

  constructor(actions: StudyActions) {
    this.#missing = createMissingCandidates(actions);
    this.#controls = element(
      'div',
      { class: 'results-controls' },
      labelled('Duty', this.#cooling),
      labelled('Growth', this.#growth),
      element('label', { class: 'results-control results-time' }, 'Read at', this.#slider, this.#time),
    );
    this.#drawings = drawnPart(element('div'), (width) => {
      const look = this.#look();
      return look ? heatDrawings(look, width) : markup``;
    });
    this.element = element(
      'section',
      { class: 'results', 'aria-label': 'Heat' },
      element('h2', {}, 'A day of heat'),
      this.#missing.element,
      this.#controls,
      this.#drawings.element,
      ...[this.#now, this.#events, this.#steady].map((table) => table.element),
    );
  }

  show(state: StudyState): void {
    this.#state = state;
    this.#missing.show(state);
    if (!this.#isNew(state)) return;
    const done = state.candidates.filter(isSimulated);
    this.#controls.hidden = done.length === 0;
    this.#setEnd(longest(done.map(({ outcome }) => outcome.heat.asSet)));
    const { cooling } = state.study.job.values;
    if (cooling !== this.#jobCooling) this.#cooling.choose(COOLINGS[cooling ? 1 : 0]);
    this.#jobCooling = cooling;
    this.#refresh();
  }

  /** The time that is read stays, unless it is the end. */
  #setEnd(end: number): void {
    const slider = this.#slider;
    const isAtEnd = Number(slider.value) >= Number(slider.max) || slider.max === '1';
    slider.max = String(end);
    if (isAtEnd) slider.value = String(end);
  }

  #refresh(): void {
    const text = durationText(Number(this.#slider.value));
    this.#slider.setAttribute('aria-valuetext', text);
    setText(this.#time, text);
    this.#drawings.refresh();
    this.#showTables();
  }

  /** What is looked at, and how; null without anything. */
  #look(): HeatLook | null {
    const state = this.#state;
    const withCoolant = this.#cooling.value === 'with coolant';
    const candidates = state?.candidates.filter(isSimulated) ?? [];
    if (!state || candidates.length === 0) return null;
    return {
      seen: candidates.map((candidate) => ({ candidate, course: courseOf(candidate, withCoolant) })),
      job: state.study.job.values,
      withCoolant,
      strong: this.#cooling.value,
      faint: COOLINGS[withCoolant ? 0 : 1],
      isZoomed: this.#growth.value === 'around the limit',
      time: Number(this.#slider.value),
    };
  }

  #showTables(): void {
    const look = this.#look();
    if (!look) {
      for (const table of [this.#now, this.#events, this.#steady]) table.hide();
      return;
    }
    const { seen, strong, time } = look;
    const candidates = seen.map(({ candidate }) => candidate);
    const courses = seen.map(({ course }) => course);
    this.#now.show(
      `After ${durationText(time)} ${strong}`,
      ungrouped(
        candidates,
        rowsOf(look, 'now', (course) => sampleAt(course, time)),
      ),
    );
    this.#events.show(
      `In ${durationText(longest(courses))} ${strong}`,
      ungrouped(candidates, eventRows(courses)),
    );
    this.#steady.show(
      `In steady state ${strong}`,
      ungrouped(
        candidates,
        rowsOf(look, 'steady', ({ steady }) => steady),
      ),
    );
  }
}

/** The figures of heat of all candidates, each at a moment of its course. */
function rowsOf({ seen, job }: HeatLook, prefix: string, stateOf: (course: Course) => HeatState | null) {
  const columns = seen.map(({ candidate, course }) => ({
    state: stateOf(course),
    absent: course.trip ? 'trips' : 'no steady state',
    hasScrew: candidate.scene.parameters.lead > 0,
  }));
  return heatRows(prefix, columns, job);
}

/** The last sample not after a time; null once the drive has tripped. */
function sampleAt({ samples, trip }: Course, time: number): LapseSample | null {
  if (trip && time > trip.time) return null;
  return samples.filter((sample) => sample.time <= time).at(-1) ?? null;
}

function longest(courses: readonly Course[]): number {
  return Math.max(0, ...courses.map(({ samples }) => samples.at(-1)?.time ?? 0));
}

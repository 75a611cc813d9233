import { ranged } from '../../../shared/core/format.ts';
import { onPage, type Sentence, sentenceText } from '../../../shared/core/sentence.ts';
import { HEAT_FIGURES } from '../../../shared/figures/heatFigures.ts';
import { coolingSentences, durationText } from '../../../shared/figures/timeLapseText.ts';
import { tripText } from '../../../shared/figures/tripText.ts';
import type { Course } from '../../../shared/protocol/timeLapse.ts';
import type { Job } from '../../../shared/study/job.ts';
import { driftChart } from '../../drawings/drift.ts';
import { growthChart } from '../../drawings/growth.ts';
import { temperaturesChart } from '../../drawings/temperatures.ts';
import { temperatureData } from '../../studyState/candidateCourses.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { heatRows } from '../../studyState/tables/heatRows.ts';
import { ungrouped } from '../../studyState/tables/table.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { figure, list } from '../paperParts.ts';
import { figureTable } from './figureTable.ts';
import { HALF } from './halfSize.ts';

/** A day of heat: temperatures, what grows by them, and what cooling has to do. */
export function heatSection(
  candidate: SimulatedCandidate,
  { values }: Job,
  candidates: readonly SimulatedCandidate[],
): Markup {
  const { heat } = candidate.outcome;
  const p = candidate.scene.parameters;
  const temperatures = (each: SimulatedCandidate) => temperatureData(each, heat.asSet.cooling);
  const { hours, asSet, switched, cooling, duty } = heat;
  const hasScrew = p.lead > 0;
  const courses = [asSet, switched];
  const columns = courses.flatMap((course) => [
    {
      title: `${courseText(course)}, after ${endText(course, hours)}`,
      state: course.samples.at(-1) ?? null,
      absent: 'trips',
      hasScrew,
    },
    {
      title: `${courseText(course)}, steady state`,
      state: course.steady,
      absent: course.trip ? 'trips' : 'no steady state',
      hasScrew,
    },
  ]);
  const rows = heatRows('report', columns, values);
  const said = [
    ...courses.flatMap(happenings),
    ...duty.reasons.map(worded),
    ...(cooling === null ? ['The cycle trips even when cold.'] : coolingSentences(p, cooling).map(worded)),
  ];
  return markup`<section><h3>Heat</h3>
<div class="drawings"><div><p>${duty.canDo ? 'The drive can do this duty.' : 'The drive cannot do this duty.'} RMS force at the end ${ranged(duty.rmsForce, 'N')} of ${ranged(duty.continuousForce, 'N')} continuous, current amplitude ${ranged(duty.rmsCurrent, 'A')} of ${ranged(duty.continuousCurrent, 'A')}.</p>
${list(said)}</div>
${figure('Temperatures over the duty', temperaturesChart(temperatures(candidate), candidates.map(temperatures), HALF))}</div>
${figureTable(ungrouped(columns, rows), { kind: 'heat' })}</section>`;
}

/** What heat does to all candidates: growth at the tool, and force that fades. */
export function heatOfAll(candidates: readonly SimulatedCandidate[], { values }: Job): Markup {
  const courses = candidates.map(({ letter, outcome }) => ({ letter, course: outcome.heat.asSet }));
  return markup`<section><h2>Heat over a day</h2>
${figure(`${HEAT_FIGURES.growth.label} over the duty`, growthChart(courses, values.growthLimit))}
${figure(`${HEAT_FIGURES.forcePerAmp.label} over the duty`, driftChart(courses))}</section>`;
}

const worded = (sentence: Sentence) => sentenceText(sentence, onPage());

function courseText({ cooling }: Course): string {
  return cooling ? 'With coolant' : 'In air';
}

function endText({ samples, trip }: Course, hours: number): string {
  return trip ? durationText(samples.at(-1)?.time ?? 0) : durationText(hours * 3600);
}

function happenings(course: Course): string[] {
  const where = courseText(course);
  const { trip, hotTime, overloadTime, steady } = course;
  return [
    ...(trip ? [`${where} the drive tripped: ${tripText(trip)}`] : []),
    ...(hotTime === null
      ? []
      : [
          `${where} the winding becomes so hot after ${durationText(hotTime)} that its current is folded back.`,
        ]),
    ...(overloadTime === null
      ? []
      : [`${where} the overload allowance of the amplifier is used up after ${durationText(overloadTime)}.`]),
    ...(steady === null && !trip
      ? [`${where} no steady state: losses rise faster with temperature than heat is removed.`]
      : []),
  ];
}

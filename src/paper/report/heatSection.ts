import { inUnit, ranged } from '../../../shared/core/format.ts';
import { onPage, type Sentence, sentenceText } from '../../../shared/core/sentence.ts';
import { coolingSentences, durationText } from '../../../shared/figures/timeLapseText.ts';
import { tripText } from '../../../shared/figures/tripText.ts';
import type { Course, HeatState } from '../../../shared/protocol/timeLapse.ts';
import type { Job } from '../../../shared/study/job.ts';
import { driftChart } from '../../drawings/drift.ts';
import { growthChart } from '../../drawings/growth.ts';
import { temperaturesChart } from '../../drawings/temperatures.ts';
import { temperatureData } from '../../studyState/candidateCourses.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { figure, list, table } from '../paperParts.ts';
import { HALF } from './halfSize.ts';

interface Line {
  readonly label: string;
  readonly value: (state: HeatState) => number;
  readonly text: (value: number) => string;
}

const degrees = (value: number) => inUnit(value, '°C');
const watts = (value: number) => ranged(value, 'W');

const LINES: readonly Line[] = [
  { label: 'Winding', value: ({ winding }) => winding, text: degrees },
  { label: 'Winding, hottest of a cycle', value: ({ windingPeak }) => windingPeak, text: degrees },
  { label: 'Coil carrier or housing', value: ({ carrier }) => carrier, text: degrees },
  { label: 'Table', value: ({ table }) => table, text: degrees },
  { label: 'Growth at the tool', value: ({ growth }) => growth, text: (growth) => ranged(growth, 'm') },
  {
    label: 'Force per ampere, of that cold',
    value: ({ forcePerAmp }) => forcePerAmp,
    text: (share) => inUnit(share, '%', 4),
  },
  { label: 'Electric power, mean', value: ({ electricPower }) => electricPower, text: watts },
  { label: 'Heat of copper', value: ({ copper }) => copper, text: watts },
  { label: 'Heat of iron', value: ({ iron }) => iron, text: watts },
  { label: 'Heat of the guide', value: ({ guide }) => guide, text: watts },
  { label: 'Given off by the carrier', value: ({ sinkHeat }) => sinkHeat, text: watts },
];

/** With a screw only. */
const SCREW_LINES: readonly Line[] = [
  { label: 'Screw', value: ({ screw }) => screw, text: degrees },
  { label: 'Heat of nut and bearings', value: ({ nut }) => nut, text: watts },
];

/** A day of heat: temperatures, what grows by them, and what cooling has to do. */
export function heatSection(
  candidate: SimulatedCandidate,
  candidates: readonly SimulatedCandidate[],
): Markup {
  const { heat } = candidate.outcome;
  const p = candidate.scene.parameters;
  const temperatures = (each: SimulatedCandidate) => temperatureData(each, heat.asSet.cooling);
  const { hours, asSet, switched, cooling, duty } = heat;
  const courses = [asSet, switched];
  const columns = courses.flatMap((course) => [
    {
      head: `${courseText(course)}, after ${endText(course, hours)}`,
      state: course.samples.at(-1) ?? null,
      absent: 'trips',
    },
    {
      head: `${courseText(course)}, settled`,
      state: course.steady,
      absent: course.trip ? 'trips' : 'no end to it',
    },
  ]);
  const lines = p.lead > 0 ? [...LINES, ...SCREW_LINES] : LINES;
  const rows = lines
    .filter(({ value }) => columns.some(({ state }) => state !== null && value(state) !== 0))
    .map(
      ({
        label,
        value,
        text,
      }) => markup`<tr><th scope="row">${label}</th>${columns.map(({ state, absent }) => markup`<td>${state === null ? absent : text(value(state))}</td>`)}</tr>
`,
    );
  const said = [
    ...courses.flatMap(happenings),
    ...duty.reasons.map(metric),
    ...(cooling === null ? ['The cycle cannot even be run cold.'] : coolingSentences(p, cooling).map(metric)),
  ];
  return markup`<section><h3>Heat</h3>
<div class="drawings"><div><p>${duty.canDo ? 'The drive can do this duty.' : 'The drive cannot do this duty.'} RMS force at the end ${ranged(duty.rmsForce, 'N')} of ${ranged(duty.continuousForce, 'N')} continuous, current amplitude ${ranged(duty.rmsCurrent, 'A')} of ${ranged(duty.continuousCurrent, 'A')}.</p>
${list(said)}</div>
${figure('Temperatures over the duty', temperaturesChart(temperatures(candidate), candidates.map(temperatures), HALF))}</div>
${table('heat', ['Figure', ...columns.map(({ head }) => head)], rows)}</section>`;
}

/** What heat does to all candidates: growth at the tool, and force that fades. */
export function heatOfAll(candidates: readonly SimulatedCandidate[], { values }: Job): Markup {
  const courses = candidates.map(({ letter, outcome }) => ({ letter, course: outcome.heat.asSet }));
  return markup`<section><h2>What a day of heat does</h2>
${figure('Growth at the tool over the duty', growthChart(courses, values.growthLimit))}
${figure('Force per ampere over the duty', driftChart(courses))}</section>`;
}

const metric = (sentence: Sentence) => sentenceText(sentence, onPage('metric'));

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
    ...(trip ? [`${where} the drive stopped itself: ${tripText(trip, 'metric')}`] : []),
    ...(hotTime === null
      ? []
      : [`${where} the winding gets so hot after ${durationText(hotTime)} that its current is folded back.`]),
    ...(overloadTime === null
      ? []
      : [`${where} the overload allowance of the amplifier is used up after ${durationText(overloadTime)}.`]),
    ...(steady === null && !trip
      ? [`${where} it never settles: losses grow faster with temperature than heat flows off.`]
      : []),
  ];
}

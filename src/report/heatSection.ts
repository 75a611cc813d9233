import { inUnit, ranged } from '../../shared/format.ts';
import type { Course, HeatState } from '../../shared/timeLapse.ts';
import { coolingSentences, durationText } from '../../shared/timeLapseText.ts';
import { type Markup, markup } from '../drawing/markup.ts';
import { list, table } from '../paper/paperParts.ts';
import type { SimulatedLane } from './reportInput.ts';

interface Line {
  readonly label: string;
  readonly text: (state: HeatState) => string;
}

const degrees = (value: number) => inUnit(value, '°C');

const LINES: readonly Line[] = [
  { label: 'Winding', text: ({ winding }) => degrees(winding) },
  { label: 'Winding, hottest of a cycle', text: ({ windingPeak }) => degrees(windingPeak) },
  { label: 'Coil carrier or housing', text: ({ carrier }) => degrees(carrier) },
  { label: 'Table', text: ({ table }) => degrees(table) },
  { label: 'Growth at the tool', text: ({ growth }) => ranged(growth, 'm') },
  { label: 'Force per ampere, of that cold', text: ({ forcePerAmp }) => inUnit(forcePerAmp, '%', 4) },
  { label: 'Electric power, mean', text: ({ electricPower }) => ranged(electricPower, 'W') },
  { label: 'Heat of copper', text: ({ copper }) => ranged(copper, 'W') },
  { label: 'Heat of iron', text: ({ iron }) => ranged(iron, 'W') },
  { label: 'Heat of the guide', text: ({ guide }) => ranged(guide, 'W') },
  { label: 'Given off by the carrier', text: ({ sinkHeat }) => ranged(sinkHeat, 'W') },
];

/** With a screw only. */
const SCREW_LINES: readonly Line[] = [
  { label: 'Screw', text: ({ screw }) => degrees(screw) },
  { label: 'Heat of nut and bearings', text: ({ nut }) => ranged(nut, 'W') },
];

/** A day of heat: temperatures, what grows by them, and what cooling has to do. */
export function heatSection({ outcome: { heat }, scene: { parameters: p } }: SimulatedLane): Markup {
  const { hours, asSet, switched, cooling, duty } = heat;
  const courses = [asSet, switched];
  const columns = courses.flatMap((course) => [
    {
      head: `${courseWords(course)}, after ${endWords(course, hours)}`,
      state: course.samples.at(-1) ?? null,
    },
    { head: `${courseWords(course)}, settled`, state: course.steady },
  ]);
  const lines = p.lead > 0 ? [...LINES, ...SCREW_LINES] : LINES;
  const rows = lines.map(
    ({
      label,
      text,
    }) => markup`<tr><th scope="row">${label}</th>${columns.map(({ state }) => markup`<td>${state === null ? 'no end to it' : text(state)}</td>`)}</tr>
`,
  );
  const said = [
    ...courses.flatMap(happenings),
    ...duty.reasons,
    ...(cooling === null ? ['The cycle cannot even be run cold.'] : coolingSentences(p, cooling)),
  ];
  return markup`<section><h3>Heat</h3>
<div class="words"><p>${duty.canDo ? 'The drive can do this duty.' : 'The drive cannot do this duty.'} RMS force at the end ${ranged(duty.rmsForce, 'N')} of ${ranged(duty.continuousForce, 'N')} continuous, current amplitude ${ranged(duty.rmsCurrent, 'A')} of ${ranged(duty.continuousCurrent, 'A')}.</p></div>
${list(said)}
${table('heat', ['', ...columns.map(({ head }) => head)], rows)}</section>`;
}

function courseWords({ cooling }: Course): string {
  return cooling ? 'With coolant' : 'In air';
}

function endWords({ samples, trip }: Course, hours: number): string {
  return trip ? durationText(samples.at(-1)?.time ?? 0) : durationText(hours * 3600);
}

function happenings(course: Course): string[] {
  const where = courseWords(course);
  const { trip, hotTime, overloadTime, steady } = course;
  return [
    ...(trip ? [`${where} the drive stopped itself: ${trip.message}`] : []),
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

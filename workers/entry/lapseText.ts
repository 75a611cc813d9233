import { fixed, inUnit, ranged } from '../../shared/core/format.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { AS_WRITTEN, type Sentence, sentenceText } from '../../shared/core/sentence.ts';
import { coolingSentences, durationText } from '../../shared/figures/timeLapseText.ts';
import type { Course, HeatState, LapseSample, TimeLapse } from '../../shared/protocol/timeLapse.ts';

const HOUR = 3600;

const COLUMNS: readonly (readonly [string, (state: HeatState) => string])[] = [
  ['Winding', ({ winding }) => fixed(winding, '°C', 1)],
  ['peak', ({ windingPeak }) => fixed(windingPeak, '°C', 1)],
  ['Carrier', ({ carrier }) => fixed(carrier, '°C', 1)],
  ['Table', ({ table }) => fixed(table, '°C', 1)],
  ['Screw', ({ screw }) => fixed(screw, '°C', 1)],
  ['Force per A', ({ forcePerAmp }) => fixed(forcePerAmp - 1, '%', 2)],
  ['Growth', ({ growth }) => ranged(growth, 'm')],
  ['Power', ({ electricPower }) => ranged(electricPower, 'W')],
  ['Copper', ({ copper }) => ranged(copper, 'W')],
];

/** The printed result of a time-lapse: a line for every hour, where it settles, and the verdicts. */
export function lapseText(scene: Scene, lapse: TimeLapse): string {
  const { parameters: p } = scene;
  const { asSet, switched, duty } = lapse;
  const rows = [
    ['Time', ...COLUMNS.map(([title]) => title)],
    ...hourly(asSet.samples).map((sample) => [durationText(sample.time), ...cells(sample)]),
    ...(asSet.steady ? [['settled', ...cells(asSet.steady)]] : []),
  ];
  return [
    scene.title,
    `  Cycle of ${ranged(lapse.cycleTime, 's')}, run at ${lapse.measurements} temperatures.`,
    '',
    ...aligned(rows),
    '',
    `  ${way(p.coolantTemperature, asSet)}`,
    `  ${way(p.coolantTemperature, switched)}`,
    `  Force ${ranged(duty.rmsForce, 'N')} RMS of ${ranged(duty.continuousForce, 'N')} continuous, ` +
      `current ${ranged(duty.rmsCurrent, 'A')} RMS of ${ranged(duty.continuousCurrent, 'A')} continuous.`,
    ...(lapse.cooling ? coolingSentences(p, lapse.cooling).map((each) => `  ${inSI(each)}`) : []),
    ...(duty.canDo
      ? ['The axis can do this duty.']
      : ['The axis cannot do this duty.', ...duty.reasons.map(inSI)]),
  ].join('\n');
}

const inSI = (each: Sentence) => sentenceText(each, AS_WRITTEN);

/** The first sample of every hour, and the last of all. */
function hourly(samples: readonly LapseSample[]): LapseSample[] {
  let next = 0;
  return samples.filter(({ time }, k) => {
    const due = time >= next;
    if (due) next = (Math.floor(time / HOUR) + 1) * HOUR;
    return due || k === samples.length - 1;
  });
}

function cells(state: HeatState): string[] {
  return COLUMNS.map(([, text]) => text(state));
}

function aligned(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0]!.map((_, column) => Math.max(...rows.map((row) => row[column]!.length)));
  return rows.map((row) => `  ${row.map((cell, column) => cell.padStart(widths[column]!)).join('  ')}`);
}

function way(coolant: number, { cooling, samples, trip, steady }: Course): string {
  const how = cooling ? `With coolant at ${inUnit(coolant, '°C')}` : 'Without cooling';
  const last = samples.at(-1);
  const now = (state: HeatState) =>
    `winding ${inUnit(state.windingPeak, '°C')}, growth ${ranged(state.growth, 'm')}`;
  const end = trip
    ? `the drive trips after ${durationText(trip.time)} (${trip.kind})`
    : last && `after ${durationText(last.time)} ${now(last)}`;
  return `${how}: ${end}; ${steady ? `settles at ${now(steady)}` : 'does not settle'}.`;
}

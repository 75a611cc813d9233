import { fixed, inUnit, ranged } from '../../shared/core/format.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { AS_WRITTEN, type Sentence, sentenceText } from '../../shared/core/sentence.ts';
import type { Unit } from '../../shared/core/units.ts';
import { figureText } from '../../shared/figures/figure.ts';
import { HEAT_FIGURES, type HeatFigureName } from '../../shared/figures/heatFigures.ts';
import { coolingSentences, durationText } from '../../shared/figures/timeLapseText.ts';
import type { Course, HeatState, LapseSample, TimeLapse } from '../../shared/protocol/timeLapse.ts';

const HOUR = 3600;
const { windingPeak, growth } = HEAT_FIGURES;

const COLUMNS = [
  'winding',
  'windingPeak',
  'carrier',
  'table',
  'screw',
  'forcePerAmp',
  'growth',
  'electricPower',
  'copper',
] as const satisfies readonly HeatFigureName[];

/** Fixed numbers of decimals, so that columns line up; figures in other units are written with a prefix and as many digits as they need. */
const DECIMALS: Partial<Record<Unit, number>> = { '°C': 1, '%': 2 };

/** A time-lapse as printed: one line per hour, then the steady state and the verdicts. */
export function lapseText(scene: Scene, lapse: TimeLapse): string {
  const { parameters: p } = scene;
  const { asSet, switched, duty } = lapse;
  const rows = [
    ['Time', ...COLUMNS.map((name) => HEAT_FIGURES[name].head)],
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
  return COLUMNS.map((name) => {
    const { unit, of } = HEAT_FIGURES[name];
    const decimals = DECIMALS[unit];
    return decimals === undefined ? ranged(of(state), unit) : fixed(of(state), unit, decimals);
  });
}

function aligned(rows: readonly (readonly string[])[]): string[] {
  const width = (column: number) => Math.max(...rows.map((row) => row[column]?.length ?? 0));
  return rows.map((row) => `  ${row.map((cell, column) => cell.padStart(width(column))).join('  ')}`);
}

function way(coolant: number, { cooling, samples, trip, steady }: Course): string {
  const how = cooling ? `With coolant at ${inUnit(coolant, '°C')}` : 'Without cooling';
  const last = samples.at(-1);
  const now = (state: HeatState) =>
    `peak winding temperature ${figureText(windingPeak, windingPeak.of(state))}, growth ${figureText(growth, growth.of(state))}`;
  const end = trip
    ? `the drive trips after ${durationText(trip.time)} (${trip.kind})`
    : last && `after ${durationText(last.time)} ${now(last)}`;
  return `${how}: ${end}; ${steady ? `settles at ${now(steady)}` : 'does not settle'}.`;
}

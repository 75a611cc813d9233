import { inUnit, ranged, readAlike } from '../core/format.ts';
import { inSystem } from '../core/unitSystem.ts';
import { durationText } from '../figures/timeLapseText.ts';
import { tripText } from '../figures/tripText.ts';
import type { Job } from '../study/job.ts';
import type { JudgedCandidate } from './judgement.ts';
import { shortestDwell } from './read.ts';
import type { FigureRow } from './rows/row.ts';
import { figure } from './rows/rows.ts';
import { clause, lowered } from './text.ts';

/** Something that the job asks and a candidate does not do. */
export interface Shortfall {
  /** Id of the row it belongs to. */
  readonly row: string;
  /** 'its speed ripple of 2.30 % is above the 2.00 % that are asked' */
  readonly text: string;
  /** The same without the limit, where it has a figure: 'its speed ripple is 2.30 %'. */
  readonly brief?: string;
  /** The same beside its figure, where row and limit stand already. */
  readonly inRow?: string;
  /** How far beyond the limit, 1 is at it; Infinity where no number says so. */
  readonly factor: number;
}

/** Everything that a candidate falls short of. */
export function shortfallsOf(job: Job, candidate: JudgedCandidate): Shortfall[] {
  return [...sizing(candidate), ...simulatedShortfalls(job, candidate)];
}

/** The same of what was simulated alone. */
export function simulatedShortfalls(job: Job, candidate: JudgedCandidate): Shortfall[] {
  return [
    ...moves(job, candidate),
    ...atMost(figure('shortRange'), job.values.window, job, candidate, null),
    ...atMost(figure('increment'), job.values.smallestStep, job, candidate, null),
    ...atMost(figure('ripple'), job.values.rippleLimit, job, candidate, ripple(candidate)),
    ...dayOfHeat(job, candidate),
  ];
}

function sizing({ sizing: { passes, reasons, figures } }: JudgedCandidate): Shortfall[] {
  if (passes) return [];
  const worst = figures.flatMap(({ value, limit }) => {
    if (limit === null) return [];
    return limit.side === 'max' ? value / limit.value : limit.value / value;
  });
  const factor = Math.max(1, ...worst.filter((each) => each > 0));
  const label = reasons.length > 0 ? reasons : ['a figure of the sizing is beyond its limit'];
  return label.map((reason, k) => {
    const brief = lowered(clause(reason));
    return { row: 'sizing', text: k === 0 ? `by calculation, ${brief}` : brief, brief, inRow: brief, factor };
  });
}

function moves(job: Job, candidate: JudgedCandidate): Shortfall[] {
  const { trip, settlingTime } = candidate.outcome.moves;
  if (trip)
    return [
      {
        row: 'moves',
        text: `its drive trips: ${lowered(clause(tripText(trip, 'metric')))}`,
        factor: Number.POSITIVE_INFINITY,
      },
    ];
  const dwell = shortestDwell(job);
  if (dwell === 0) return [];
  const label = `within the dwell of ${ranged(dwell, 's')}`;
  const window = `±${ranged(job.values.window, 'm')}`;
  if (settlingTime === null)
    return [
      {
        row: 'settling',
        text: `it does not settle into ${window} ${label}`,
        factor: Number.POSITIVE_INFINITY,
      },
    ];
  return settlingTime <= dwell || readAlike(settlingTime, dwell, 's')
    ? []
    : [
        {
          row: 'settling',
          text: `it takes ${ranged(settlingTime, 's')} to settle into ${window}, not ${label}`,
          brief: `it takes ${ranged(settlingTime, 's')} to settle`,
          factor: settlingTime / dwell,
        },
      ];
}

function ripple({ outcome: { accuracy } }: JudgedCandidate): string | null {
  return 'trip' in accuracy.ripple
    ? `its scan trips: ${lowered(clause(tripText(accuracy.ripple.trip, 'metric')))}`
    : null;
}

function dayOfHeat(job: Job, candidate: JudgedCandidate): Shortfall[] {
  const { trip, hotTime, overloadTime } = candidate.outcome.heat.asSet;
  const { foldbackTemperature, ambient, continuousCurrent } = candidate.scene.parameters;
  // A drive that trips in its moves does so in the first cycle of the day, which is said already.
  if (trip && candidate.outcome.moves.trip) return [];
  if (trip)
    return [
      {
        row: 'winding',
        text: `after ${durationText(trip.time)} of the day its drive trips: ${lowered(clause(tripText(trip, 'metric')))}`,
        factor: Number.POSITIVE_INFINITY,
      },
    ];
  const found: Shortfall[] = [];
  if (hotTime !== null) {
    const hottest = figure('winding').of(candidate, job) ?? foldbackTemperature;
    found.push({
      row: 'winding',
      text: `after ${durationText(hotTime)} its winding passes ${inUnit(foldbackTemperature, '°C')}, where its current is folded back`,
      factor: Math.max((hottest - ambient) / (foldbackTemperature - ambient), 1),
    });
  }
  if (overloadTime !== null)
    found.push({
      row: 'rmsCurrent',
      text: `after ${durationText(overloadTime)} its amplifier has used up its overload allowance and folds back to ${ranged(continuousCurrent, 'A')}`,
      factor: Math.max((figure('rmsCurrent').of(candidate, job) ?? 0) / continuousCurrent, 1),
    });
  return [...found, ...atMost(figure('growth'), job.values.growthLimit, job, candidate, null)];
}

function atMost(
  row: FigureRow,
  limit: number,
  job: Job,
  candidate: JudgedCandidate,
  error: string | null,
): Shortfall[] {
  // What the job leaves open decides nothing.
  if (limit === 0) return [];
  const value = row.of(candidate, job);
  if (value === null) {
    const text = error ?? `${row.name}: ${row.text(value)}`;
    return [{ row: row.id, text, factor: Number.POSITIVE_INFINITY }];
  }
  // What reads as the limit does keeps it, in whatever units it is read.
  if (value <= limit || inSystem('metric', () => row.text(value) === row.text(limit))) return [];
  const text = `its ${row.name}, ${row.text(value)}, is above the ${row.text(limit)} that the job allows`;
  return [
    {
      row: row.id,
      text,
      brief: `its ${row.name} is ${row.text(value)}`,
      inRow: `above ${row.text(limit)}`,
      factor: value / limit,
    },
  ];
}

import { fixed, inUnit, shortest } from '../../../shared/core/format.ts';
import { parameterLabel } from '../../../shared/core/parameters/labels.ts';
import {
  RUN_FIGURE_NAMES,
  RUN_FIGURES,
  type RunFigureName,
  runFigureText,
} from '../../../shared/tolerance/runFigures.ts';
import { spreadText } from '../../../shared/tolerance/spread.ts';
import type { Estimate, Sensitivity, ToleranceSummary } from '../../../shared/tolerance/summary.ts';
import { spreadNames, type ToleranceStudy } from '../../../shared/tolerance/toleranceStudy.ts';

/** The printed result of a tolerance study. */
export function toleranceText(study: ToleranceStudy, summary: ToleranceSummary): string {
  const { scene, sampling, seed, runs, spreads, limits } = study;
  return [
    `${scene.title}: ${summary.runs} of ${runs} machines, ${sampling}, seed ${seed}`,
    ...spreadNames(study).map((name) => {
      const spread = spreads[name];
      return `  ${parameterLabel(name)} (${name}): ${spread ? spreadText(name, spread, scene.parameters[name]) : ''}`;
    }),
    '',
    `Good: ${estimateText(summary.good)}`,
    ...RUN_FIGURE_NAMES.flatMap((name) => {
      const limit = limits[name];
      return limit === undefined ? [] : [`  limit of ${name}: ${runFigureText(name, limit)}`];
    }),
    ...summary.trips.map(({ kind, count }) => `  tripped by ${kind}: ${count}`),
    ...(summary.unsettled > 0 ? [`  not settled: ${summary.unsettled}`] : []),
    ...(summary.untrusted > 0
      ? [`  not to be trusted, energy account does not balance: ${summary.untrusted}`]
      : []),
    `  worst: machine ${summary.worst}`,
    '',
    ...figureLines(summary),
    ...summary.sensitivities.flatMap(sensitivityLines),
  ].join('\n');
}

function estimateText({ share, low, high }: Estimate): string {
  const text = (value: number) => shortest(value, '%', 4);
  return `${text(share)}, 95 % confidence interval ${text(low)} to ${text(high)} (Wilson)`;
}

function figureLines({ figures }: ToleranceSummary): string[] {
  const head = ['', 'min', '5 %', 'median', '95 %', 'max', 'machine'];
  const rows = figures.map(({ name, min, low, median, high, max, worst }) => [
    RUN_FIGURES[name].label,
    ...[min, low, median, high, max].map((value) => runFigureText(name, value)),
    String(worst),
  ]);
  const width = (column: number) => Math.max(...[head, ...rows].map((row) => row[column]?.length ?? 0));
  return [head, ...rows].map(([label = '', ...cells]) =>
    ['', label.padEnd(width(0)), ...cells.map((cell, k) => cell.padStart(width(k + 1)))].join('  '),
  );
}

function sensitivityLines({ of, influences, noise, explained }: Sensitivity): string[] {
  const label = of === 'good' ? 'Being good' : RUN_FIGURES[of as RunFigureName].label;
  const told = influences.filter(({ share }) => share > noise);
  return [
    '',
    `${label} depends on (first-order Sobol index; rank regression, R² ${explained.toFixed(2)}):`,
    ...told.map(
      ({ name, share, slope }) =>
        `  ${inUnit(share, '%').padStart(7)}  ${fixed(slope, '', 2).padStart(5)}  ${parameterLabel(name)}`,
    ),
    ...(told.length < influences.length
      ? [`  all others below ${inUnit(noise, '%', 2)}, which cannot be told from chance`]
      : []),
  ];
}

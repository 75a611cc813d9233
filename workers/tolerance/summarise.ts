import { at, valueAt } from '../../shared/core/at.ts';
import {
  badness,
  isGood,
  RUN_FIGURE_NAMES,
  type RunFigureName,
  type RunResult,
} from '../../shared/tolerance/runFigures.ts';
import type { FigureSpread, Sensitivity, ToleranceSummary } from '../../shared/tolerance/summary.ts';
import { machinesOf, spreadNames, type ToleranceStudy } from '../../shared/tolerance/toleranceStudy.ts';
import { wilson } from '../../shared/tolerance/wilson.ts';
import { risingOrder } from './ranks.ts';
import { dependence } from './sensitivity.ts';

/** Fewer machines than this, for each parameter, say nothing about what matters. */
const PER_INPUT = 10;

/**
 * What the machines that have run so far say about all. Null before the first.
 *
 * @param results in any order, none twice
 */
export function summarise(study: ToleranceStudy, results: readonly RunResult[]): ToleranceSummary | null {
  const [first] = results;
  if (first === undefined) return null;
  const { limits } = study;
  const good = results.filter((result) => isGood(result, limits)).length;
  const kinds = [...new Set(results.flatMap(({ trip }) => trip ?? []))];
  return {
    runs: results.length,
    good: wilson(good, results.length),
    trips: kinds.map((kind) => ({ kind, count: results.filter(({ trip }) => trip === kind).length })),
    unsettled: results.filter(({ trip, figures }) => trip === null && figures.settlingTime === null).length,
    untrusted: results.filter(({ holds }) => !holds).length,
    figures: RUN_FIGURE_NAMES.flatMap((name) => spreadOf(name, results) ?? []),
    sensitivities: sensitivities(study, results),
    worst: results.reduce((worst, each) => (isWorse(study, each, worst) ? each : worst), first).run,
  };
}

/** Of two that are equally bad the one with the lower number, whatever the order they came in. */
function isWorse({ limits }: ToleranceStudy, a: RunResult, b: RunResult): boolean {
  const [x, y] = [badness(a, limits), badness(b, limits)];
  return x > y || (x === y && a.run < b.run);
}

function spreadOf(name: RunFigureName, results: readonly RunResult[]): FigureSpread | null {
  const having = results.filter(({ figures }) => figures[name] !== null);
  if (having.length === 0) return null;
  const values = Float64Array.from(having, ({ figures }) => figures[name] ?? Number.NaN);
  const order = risingOrder(values);
  const quantile = (share: number) => valueAt(values, at(order, Math.round(share * (order.length - 1))));
  const max = quantile(1);
  const worst = Math.min(...having.filter(({ figures }) => figures[name] === max).map(({ run }) => run));
  const [min, low, median, high] = [quantile(0), quantile(0.05), quantile(0.5), quantile(0.95)];
  return { name, count: having.length, min, low, median, high, max, worst };
}

function sensitivities(study: ToleranceStudy, results: readonly RunResult[]): Sensitivity[] {
  const names = spreadNames(study);
  const machine = machinesOf(study);
  const inputs = new Map(results.map(({ run }) => [run, machine(run).values]));
  const measured = (of: Sensitivity['of'], value: (result: RunResult) => number | null) => {
    const having = results.filter((result) => value(result) !== null);
    if (having.length < PER_INPUT * names.length) return [];
    const columns = names.map((_, j) =>
      Float64Array.from(having, ({ run }) => inputs.get(run)?.[j] ?? Number.NaN),
    );
    const y = Float64Array.from(having, (result) => value(result) ?? Number.NaN);
    const { shares, slopes, noise, explained } = dependence(columns, y);
    const influences = names
      .map((name, j) => ({ name, share: at(shares, j), slope: at(slopes, j) }))
      .sort((a, b) => b.share - a.share || Math.abs(b.slope) - Math.abs(a.slope));
    return [{ of, influences, noise, explained }];
  };
  return [
    ...measured('good', (result) => (isGood(result, study.limits) ? 1 : 0)),
    ...RUN_FIGURE_NAMES.flatMap((name) => measured(name, ({ figures }) => figures[name])),
  ];
}

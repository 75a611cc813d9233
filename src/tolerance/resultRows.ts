import { isGood, RUN_FIGURE_NAMES, type RunResult } from '../../shared/tolerance/runFigures.ts';
import { machinesOf, spreadNames, type ToleranceStudy } from '../../shared/tolerance/toleranceStudy.ts';

/** Every machine with its parameters and figures, one to a line, SI, in the order of their numbers. */
export function resultRows(study: ToleranceStudy, results: readonly RunResult[]): string[][] {
  const machine = machinesOf(study);
  return [
    ['machine', ...spreadNames(study), 'good', 'trip', ...RUN_FIGURE_NAMES],
    ...[...results]
      .sort((a, b) => a.run - b.run)
      .map((result) => [
        String(result.run),
        ...Array.from(machine(result.run).values, String),
        isGood(result, study.limits) ? 'yes' : 'no',
        result.trip ?? '',
        ...RUN_FIGURE_NAMES.map((name) => String(result.figures[name] ?? '')),
      ]),
  ];
}

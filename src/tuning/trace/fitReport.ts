import { inUnit, ranged } from '../../../shared/core/format.ts';
import { FITTED, type FitResult, type FittedName } from '../../../shared/protocol/fit.ts';
import { element } from '../../ui/dom.ts';
import { figureTable } from '../../ui/figureTable.ts';
import { createResidualPlot } from './residualPlot.ts';

const VERDICTS = {
  white: 'The residual looks like noise.',
  'not white': 'The residual is not only noise; the intervals were widened accordingly.',
  poor: 'The residual is larger than it should be: treat the numbers with caution.',
} as const;

/** The estimates with their intervals, why others are missing, the residual, and what to know before believing it. */
export function createFitReport(result: FitResult): HTMLElement {
  const { estimates, unfitted, goodness, forces, notes } = result;
  const rows = (Object.keys(FITTED) as FittedName[]).flatMap((name) => {
    const { label, unit } = FITTED[name];
    const estimate = estimates[name];
    const why = unfitted[name];
    if (!estimate && !why) return [];
    const cells = estimate
      ? [
          ranged(estimate.value, unit, 4),
          `${ranged(estimate.low, unit, 4)} to ${ranged(estimate.high, unit, 4)}`,
        ]
      : ['—', why ?? ''];
    return [{ head: label, cells }];
  });
  const text = goodness
    ? `${VERDICTS[goodness.verdict]} The model explains ${inUnit(goodness.explained, '%', 5)} of the force; ${ranged(goodness.rmsResidual, 'N')} RMS remain of ${ranged(goodness.rmsForce, 'N')}.`
    : 'No part of the motion could be fitted.';
  return element(
    'div',
    { class: 'fit-report' },
    figureTable({ class: 'dialog-table', columns: ['', 'Fitted', '95 % confidence interval'], rows }),
    element('p', {}, text),
    ...(forces ? [createResidualPlot(forces)] : []),
    element('ul', {}, ...notes.map((note) => element('li', {}, note))),
  );
}

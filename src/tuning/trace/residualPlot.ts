import { ranged } from '../../../shared/core/format.ts';
import type { ForceResidual } from '../../../shared/protocol/fit.ts';
import type { Drawing } from '../../plot/drawing.ts';
import { drawn } from '../../plot/drawn.ts';
import type { Size } from '../../plot/frame.ts';
import { lineChart } from '../../plot/lineChart.ts';
import { point } from '../../plot/marks.ts';
import { greatestOf, rangeOf, widened } from '../../plot/range.ts';
import { element } from '../../ui/dom.ts';

const FORCES: Size = { width: 820, height: 230 };
const RESIDUAL: Size = { width: 820, height: 190 };
/** Room above and below the residuals that were fitted, as a share of the largest. */
const SPARE = 1.1;

/** Forces and residual of a fit, one chart above the other. */
export function createResidualPlot(forces: ForceResidual): HTMLElement {
  return element(
    'figure',
    { class: 'residual' },
    drawn(forcesChart(forces), residualChart(forces)),
    element(
      'figcaption',
      {},
      'Above: force of the measured current, and of the fitted model. Below: the residual; ',
      'open circles were not fitted, because the table is at rest or reversing there.',
    ),
  );
}

/** Force of the measured current with that of the fitted model. */
export function forcesChart({ time, measured, model }: ForceResidual, size: Size = FORCES): Drawing {
  const [low, high] = rangeOf(measured, model);
  return lineChart(
    {
      description: `Measured and modelled force, ${ranged(low, 'N')} to ${ranged(high, 'N')}.`,
      x: timeAxis(time),
      y: { title: 'Force', unit: 'N', ...widened(low, high) },
      series: [
        { name: 'measured', x: time, y: measured, pen: { colour: 'force', width: 2 } },
        { name: 'model', x: time, y: model, pen: { colour: 'ink', width: 1.5, dash: 'dashed' } },
      ],
    },
    size,
  );
}

/**
 * What the model leaves of the force. The scale is that of the windows that were fitted; others may
 * lie beyond its ends, and are drawn there.
 */
export function residualChart({ time, residual, used }: ForceResidual, size: Size = RESIDUAL): Drawing {
  const fitted = residual.filter((_, k) => used[k] === 1);
  const shown = fitted.length > 0 ? fitted : residual;
  const limit = SPARE * greatestOf(shown.map(Math.abs));
  const { from, to } = widened(-limit, limit);
  return lineChart(
    {
      description: `Residual force, to ±${ranged(limit / SPARE, 'N')} where the model was fitted.`,
      x: timeAxis(time),
      y: { title: 'Residual', unit: 'N', from, to },
      series: [],
      values: ({ x, y }) =>
        Array.from(residual, (value, k) => {
          const isUsed = used[k] === 1;
          const held = Math.min(Math.max(value, from), to);
          return point(x.at(time[k] ?? Number.NaN), y.at(held), isUsed ? 'dot' : 'ring', 2.5, {
            colour: isUsed ? 'error' : 'soft',
          });
        }),
    },
    size,
  );
}

function timeAxis(time: Float64Array) {
  const [from, to] = rangeOf(time);
  return { title: 'Time', unit: 's', from, to } as const;
}

import { at, valueAt } from '../../shared/core/at.ts';
import { positionRate } from '../../shared/core/crossChecks.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { MeasuredResponse, TakenResponse } from '../../shared/protocol/response.ts';
import { PositionController } from '../analysis/positionController.ts';
import { responseOf } from '../analysis/response.ts';
import { type Complex, minus, ONE, over, plus, scaled, times, unit } from '../math/complex.ts';
import { fitAxis } from './axisFit/fitAxis.ts';

/** Points from which masses, springs and a delay can be told. */
const FEWEST = 12;

/**
 * A response as measured on a real axis, turned into the open loop with the controller that is set now, and fitted: P = L/C. Points
 * from half the rate of the position loop on are left out: a sampled loop knows none.
 *
 * @throws RangeError where the response has too few points in the band
 */
export function takeResponse(p: Parameters, measured: MeasuredResponse): TakenResponse {
  const controller = new PositionController(p);
  const inBand = [...measured.frequency.keys()].filter(
    (k) => valueAt(measured.frequency, k) > 0 && valueAt(measured.frequency, k) < positionRate(p) / 2,
  );
  if (inBand.length < FEWEST)
    throw new RangeError(
      `The response has ${inBand.length} points below half the rate of the position loop; at least ${FEWEST} are needed.`,
    );
  const omega = inBand.map((k) => 2 * Math.PI * valueAt(measured.frequency, k));
  const feedback = omega.map((w) => {
    const { position, speed } = controller.feedback(unit(w * controller.period));
    return scaled(plus(position, speed), 1 / controller.perForce);
  });
  const loop = inBand.map((k, i): Complex => {
    const value = { re: valueAt(measured.re, k), im: valueAt(measured.im, k) };
    if (measured.kind === 'open loop') return value;
    return measured.kind === 'sensitivity' ? minus(over(ONE, value), ONE) : times(at(feedback, i), value);
  });
  return {
    loop: {
      frequency: Float64Array.from(omega, (w) => w / (2 * Math.PI)),
      openLoop: responseOf(loop),
      sensitivity: responseOf(
        loop.map((value) => over(ONE, plus(ONE, value))),
        'highest',
      ),
      coherence: new Float64Array(loop.length).fill(1),
      ended: null,
    },
    fit: fitAxis(p, { omega, plant: loop.map((value, i) => over(value, at(feedback, i))) }),
  };
}

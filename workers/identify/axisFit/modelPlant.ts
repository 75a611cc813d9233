import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { PositionController } from '../../analysis/positionController.ts';
import { SampledLoop } from '../../analysis/sampledLoop.ts';
import { type Complex, over, plus, scaled, unit } from '../../math/complex.ts';

/** Encoder reading over motor force of the model, m/N, with its guide sliding; `omega` in rad/s. */
export function modelPlant(p: Parameters, omega: readonly number[]): Complex[] {
  const loop = new SampledLoop(p, { ...startingPoint(p), friction: 'sliding' });
  const controller = new PositionController(p);
  return omega.map((w) => {
    const { position, speed } = controller.feedback(unit(w * controller.period));
    return over(loop.openLoop(w), scaled(plus(position, speed), 1 / controller.perForce));
  });
}

import { Matrix } from '../math/matrix.ts';
import type { DrivenAxis } from './drivenAxis.ts';
import type { PositionController } from './positionController.ts';
import { combine, type Signal, single, widened } from './signal.ts';

/**
 * Axis and controller combined over one sample at a standing setpoint. The states are those of the axis, then as far as the
 * controller has them: the filtered velocity command, the integral, the observer's estimate with the speed and the force before, and
 * two per filter.
 */
export function closedLoop(axis: DrivenAxis, controller: PositionController): Matrix {
  const { weights, observer, filters, commandWeight, period } = controller;
  const driven = axis.a.rows;
  const filtersCommand = commandWeight < 1;
  const integrates = weights.errorIntegral > 0 || weights.speedIntegral > 0;
  let n = driven;
  const take = (states: number) => {
    n += states;
    return n - states;
  };
  const command = take(filtersCommand ? 1 : 0);
  const integral = take(integrates ? 1 : 0);
  const estimate = take(observer ? 3 : 0);
  const shaped = take(2 * filters.length);

  const result = new Matrix(n, n);
  result.place(axis.a, 0, 0);
  const state = (index: number) => single(index, n);
  const speed = widened(axis.speedEstimate, n);
  // The error behind the filter on the velocity command, which is that of the error divided by the position gain.
  let error = combine([-1, widened(axis.reading, n)]);
  if (filtersCommand) {
    error = combine([1 - commandWeight, state(command)], [commandWeight, error]);
    result.row(command).set(error);
  }
  let force = combine([weights.error, error], [-weights.speed, speed]);
  if (integrates) {
    const sum = combine(
      [1, state(integral)],
      [weights.errorIntegral * period, error],
      [-weights.speedIntegral * period, speed],
    );
    result.row(integral).set(sum);
    force = combine([1, force], [1, sum]);
  }
  if (observer) {
    const { weight, massPerPeriod } = observer;
    const load = combine(
      [1 - weight, state(estimate)],
      [weight, state(estimate + 2)],
      [-weight * massPerPeriod, speed],
      [weight * massPerPeriod, state(estimate + 1)],
    );
    result.row(estimate).set(load);
    result.row(estimate + 1).set(speed);
    force = combine([1, force], [1, load]);
  }
  // Transposed direct form II: the smallest number of states with the same response.
  filters.forEach(({ b0, b1, b2, a1, a2 }, k) => {
    const at = shaped + 2 * k;
    const filtered: Signal = combine([b0, force], [1, state(at)]);
    result.row(at).set(combine([b1, force], [-a1, filtered], [1, state(at + 1)]));
    result.row(at + 1).set(combine([b2, force], [-a2, filtered]));
    force = filtered;
  });
  if (observer) result.row(estimate + 2).set(force);
  for (let i = 0; i < driven; i++) {
    const effect = axis.command.get(i, 0) * controller.perForce;
    if (effect !== 0) result.row(i).set(combine([1, result.row(i)], [effect, force]));
  }
  return result;
}

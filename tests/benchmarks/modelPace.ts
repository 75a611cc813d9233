import { SCENES } from '../../scenes/index.ts';
import { Axis } from '../../workers/run/axis.ts';

export interface Pace {
  readonly name: string;
  /** Simulated seconds per second, warm. */
  readonly realTimeFactor: number;
  readonly currentRate: number;
  readonly energyResidual: number;
}

/** Runs every shipped scene for `seconds` of simulated time after a warm-up. */
export function modelPace(seconds = 2): Pace[] {
  for (const scene of SCENES) timed(new Axis(scene), 0.2);
  return SCENES.map((scene) => {
    const axis = new Axis(scene);
    timed(axis, 0.3);
    const realTimeFactor = timed(axis, seconds);
    return {
      name: scene.id ?? scene.title,
      realTimeFactor,
      currentRate: scene.parameters.currentRate,
      energyResidual: axis.audit.relativeResidual,
    };
  });
}

function timed(axis: Axis, seconds: number): number {
  const start = axis.time;
  const from = performance.now();
  while (axis.time < start + seconds && axis.step());
  return (axis.time - start) / ((performance.now() - from) / 1000);
}

import { SCENES } from '../../scenes/index.ts';
import { at } from '../../shared/core/at.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { startingPoint } from '../../shared/protocol/analysis.ts';
import { analyse } from '../../workers/analysis/analyse.ts';
import { processorClock } from './processorClock.ts';

export interface AnalysisPace {
  readonly name: string;
  /** Median and longest time of one analysis, warm, ms of the processor. */
  readonly median: number;
  readonly longest: number;
  readonly points: number;
}

/** Analyses the loop of every shipped scene `times` times, each with another gain as a slider would give. */
export function analysisPace(times = 40): AnalysisPace[] {
  const timed = (scene: Scene) => {
    let points = 0;
    const durations = Array.from({ length: times }, (_, k) => {
      const p = { ...scene.parameters, Kp: scene.parameters.Kp * (1 + k / 1000) };
      const clock = processorClock();
      points = analyse(p, startingPoint(p)).frequency.length;
      return 1000 * clock();
    }).sort((a, b) => a - b);
    return {
      name: scene.id ?? scene.title,
      median: at(durations, times >> 1),
      longest: at(durations, times - 1),
      points,
    };
  };
  for (const each of SCENES) timed(each);
  return SCENES.map(timed);
}

import { describe, expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { measureRun, type RunSummary } from '../../../workers/run/measureRun.ts';
import { batchSolver, odexSolver } from '../../../workers/solver/engine.ts';
import { compared, isWithin } from './agreement.ts';
import { randomScene } from './randomScenes.ts';

describe.each(SCENES.map((scene) => [scene.id, scene] as const))('%s by the batch engine', (_, scene) => {
  it('moves and takes current as odex says at its tightest, and its energy account balances', () => {
    const { batch, ticks, energyHolds, engine } = compared(scene, 0.3);
    expect(engine).toBe('batch');
    expect(batch.table).toBeLessThan(1);
    expect(batch.current).toBeLessThan(1);
    expect(ticks[1]).toBe(ticks[0]);
    expect(energyHolds).toBe(true);
  });

  it('has the figures of the live engine within 0.5 %', () => {
    const [odex, batch] = [odexSolver, batchSolver].map((solver) =>
      measureRun(scene, 0.5, () => {}, solver),
    ) as [RunSummary, RunSummary];
    const figures = ['peakFollowingError', 'rmsFollowingError', 'peakToolError', 'rmsForce'] as const;
    const others = ['rmsCurrent', 'peakCurrent', 'copperLoss', 'windingTemperature', 'energyIn'] as const;
    for (const name of [...figures, ...others])
      expect(Math.abs(batch[name] - odex[name]), name).toBeLessThanOrEqual(5e-3 * Math.abs(odex[name]));
    expect(batch.settlingTime === null).toBe(odex.settlingTime === null);
    expect(batch.settlingTime ?? 0).toBeCloseTo(odex.settlingTime ?? 0, 3);
    expect(batch.moves).toHaveLength(odex.moves.length);
  });
});

it('agrees on legal scenes drawn at random', () => {
  for (let number = 0; number < 10; number++) {
    const { batch, ticks, energyHolds } = compared(randomScene(number), 0.05);
    expect(isWithin(batch), `scene ${number}: ${JSON.stringify(batch)}`).toBe(true);
    expect(ticks[1], `scene ${number}`).toBe(ticks[0]);
    expect(energyHolds, `scene ${number}`).toBe(true);
  }
});

import { sceneById } from '../../scenes/index.ts';
import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_COUNT } from '../../shared/core/channels.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { measureRun, type RunSummary } from '../../workers/run/measureRun.ts';

export function shelfScene(id: string, changes: ParameterChanges = {}): Scene {
  const scene = sceneById(id);
  return { ...scene, parameters: { ...scene.parameters, ...changes } };
}

/** A run with the records of all its position-loop samples. */
export function recordedRun(scene: Scene, seconds: number): { summary: RunSummary; samples: Float64Array[] } {
  const samples: Float64Array[] = [];
  const summary = measureRun(scene, seconds, (record) => {
    const copy = new Float64Array(CHANNEL_COUNT);
    copy.set(record);
    samples.push(copy);
  });
  return { summary, samples };
}

/** Values of one channel between two simulated times. */
export function between(samples: Float64Array[], channel: number, from: number, to: number): number[] {
  return samples.filter((r) => valueAt(r, 0) >= from && valueAt(r, 0) < to).map((r) => valueAt(r, channel));
}

export function rms(values: number[]): number {
  const mean = values.reduce((a, b) => a + b, 0) / values.length;
  return Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / values.length);
}

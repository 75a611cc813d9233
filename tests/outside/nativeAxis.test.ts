import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { SCENES } from '../../scenes/index.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { Axis } from '../../workers/run/axis.ts';
import { batchSolver } from '../../workers/solver/engine.ts';
import { cold, setpointsOf } from '../benchmarks/enginePace.ts';
import { NativeAxis } from '../benchmarks/native/nativeAxis.ts';
import { ROOT } from '../tools/sources.mjs';

/** The yardstick of pace is the same axis: a program in C with equations of its own, in fixed steps without any control of the error. */
const native = NativeAxis.compiled(join(ROOT, 'tests/benchmarks/native'));
afterAll(() => native?.remove());

describe.runIf(native !== null)('the program in C', () => {
  it.each(SCENES.map((scene) => [scene.id, cold(scene)] as const))(
    'ends where the axis ends: %s',
    (_, scene) => {
      const seconds = 0.2;
      const p = scene.parameters;
      const ticks = Math.round(seconds * p.currentRate);
      const axis = new Axis(scene, { solver: batchSolver });
      for (let k = 0; k <= ticks; k++) expect(axis.step()).toBe(true);
      const run = native?.run(p, ticks, setpointsOf(scene, seconds));
      expect(
        Math.abs((run?.table ?? Number.NaN) - (axis.record[C.tablePosition] ?? Number.NaN)),
      ).toBeLessThan(5e-9);
    },
  );
});

import { expect, it } from 'vitest';
import { DEFAULT_STUDY } from '../../../scenes/defaultStudy.ts';
import { PRESETS } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { scanScene } from '../../../shared/study/scanScene.ts';
import { Axis } from '../../../workers/run/axis.ts';

const { job, candidates } = DEFAULT_STUDY;
const scene = candidateScene(job, at(candidates, 0), PRESETS);

it('runs over the length of the scan at its speed, inside the travel', () => {
  const scan = scanScene(job, scene);
  expect(checkParameters(scan.parameters, defaultParameters()).problems).toEqual([]);
  const axis = new Axis(scan);
  let [from, to] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (let k = 0; k < 4 * scan.parameters.currentRate; k++) {
    expect(axis.step()).toBe(true);
    if (Math.abs(at(axis.record, C.setSpeed) - job.values.scanSpeed) > 1e-9) continue;
    from = Math.min(from, at(axis.record, C.setpoint));
    to = Math.max(to, at(axis.record, C.setpoint));
  }
  expect(to - from).toBeGreaterThan(0.99 * job.values.scanLength);
  expect(to - from).toBeLessThan(1.05 * job.values.scanLength);
});

it('is the moves where the job asks for no scan', () => {
  const open = { ...job, values: { ...job.values, rippleLimit: 0 } };
  expect(scanScene(open, scene)).toBe(scene);
});

import { describe, expect, it } from 'vitest';
import { SCENES } from '../../../../scenes/index.ts';
import { coilForces, fluxLinkage, sheetPerAmp } from '../../../../shared/axis/flux/coilForces.ts';
import { motorFlux } from '../../../../shared/axis/flux/motorFlux.ts';
import { motorSize } from '../../../../shared/axis/motorSize.ts';
import { magnetFactor } from '../../../../shared/axis/temperature.ts';
import { valueAt } from '../../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../../shared/core/channels.ts';
import type { Scene } from '../../../../shared/core/scene.ts';
import { recordedRun } from '../../../scenes/runs.ts';

const direct = SCENES.filter((s) => s.driveType !== 'screw' && s.parameters.drive === 'on');
const isAligned = ({ parameters: p }: Scene) =>
  p.misalignment2 === 0 && p.misalignment3 === 0 && p.misalignment4 === 0;
const aligned = direct.filter(isAligned);

const stateOf = (sample: Float64Array) => ({
  fieldCurrent: valueAt(sample, C.fieldCurrent),
  forceCurrent: valueAt(sample, C.forceCurrent),
  position: valueAt(sample, C.motorPosition),
  carrier: valueAt(sample, C.carrierTemperature),
});

function forcesOf({ driveType, parameters: p }: Scene, sample: Float64Array) {
  const size = motorSize(driveType, p);
  const pitch = size.driveType === 'screw' ? 0 : size.coilPitch;
  return Array.from({ length: p.motorCount }, (_, j) =>
    coilForces(p, j, size.coils, pitch, stateOf(sample)),
  ).flat();
}

describe('the forces of the coils of a running axis', () => {
  it.each(aligned.map((scene) => [scene.id, scene] as const))(
    '%s: add up to the force of its gauge',
    (_, scene) => {
      const { samples } = recordedRun(scene, 0.12);
      const gauge = samples.map((sample) => valueAt(sample, C.motorForce));
      const peak = Math.max(...gauge.map(Math.abs));
      expect(peak).toBeGreaterThan(0.1);
      const worst = samples.reduce((worst, sample, i) => {
        const sum = forcesOf(scene, sample).reduce((all, { force }) => all + force, 0);
        return Math.max(worst, Math.abs(sum - (gauge[i] as number)));
      }, 0);
      expect(worst / peak).toBeLessThan(0.01);
    },
  );

  it('leave out no more than the current that circulates between misaligned motors could give', () => {
    const scene = direct.find((each) => !isAligned(each)) as Scene;
    const p = scene.parameters;
    for (const sample of recordedRun(scene, 0.12).samples) {
      const sum = forcesOf(scene, sample).reduce((all, { force }) => all + force, 0);
      const perAmp = 1.5 * (Math.PI / p.polePitch) * fluxLinkage(p, stateOf(sample));
      const bound = p.motorCount * perAmp * valueAt(sample, C.circulatingCurrent);
      expect(Math.abs(sum - valueAt(sample, C.motorForce))).toBeLessThanOrEqual(bound + 1e-9);
    }
  });

  it('are what the computed field does to the sheet of current', () => {
    const scene = direct.find(({ driveType }) => driveType === 'flat') as Scene;
    const p = scene.parameters;
    const flux = motorFlux(scene.driveType, p);
    const { samples } = recordedRun(scene, 0.12);
    const sample = samples.at(-1) as Float64Array;
    const state = stateOf(sample);
    const b1 = (flux?.fundamental ?? 0) * magnetFactor(p, state.carrier);
    const sheet = sheetPerAmp(p, state, flux?.fundamental ?? 0, flux?.area ?? 0) * state.forceCurrent;
    const sum = forcesOf(scene, sample).reduce((all, { force }) => all + force, 0);
    // A sheet K cos in a field B cos: half of the product of the amplitudes on every square metre.
    expect(Math.abs((b1 * sheet * (flux?.area ?? 0)) / 2 / sum - 1)).toBeLessThan(1e-9);
  });
});

import { Box3 } from 'three';
import { describe, expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { Bin } from '../../../src/stage/build/bin.ts';
import { layout } from '../../../src/stage/build/layout.ts';
import { cover } from '../../../src/stage/parts/cover.ts';
import { kits, namedMaterials } from './kits.ts';

describe('bellows over the magnets', () => {
  it.each(['tubular', 'u-channel', 'flat'] as const)(
    'reach from the ends of the track to the coil unit, wherever it is: %s',
    (driveType) => {
      const [, p] = present(kits(driveType)[0]);
      const plan = layout(driveType, p);
      const { group, pose } = present(cover({ bin: new Bin(), m: namedMaterials() }, plan));
      for (const place of [p.travelMin, 0, p.travelMax]) {
        pose(place);
        group.updateMatrixWorld(true);
        const [left, right] = group.children.map((mesh) => new Box3().setFromObject(mesh));
        const half = plan.motor.length / 2;
        expect(present(left).min.x).toBeCloseTo(plan.from, 6);
        expect(present(left).max.x).toBeCloseTo(place - half, 6);
        expect(present(right).min.x).toBeCloseTo(place + half, 6);
        expect(present(right).max.x).toBeCloseTo(plan.to, 6);
      }
    },
  );

  it('are not there over a screw, which has no magnets', () => {
    const [, p] = present(kits('screw')[0]);
    expect(cover({ bin: new Bin(), m: namedMaterials() }, layout('screw', p))).toBeNull();
  });
});

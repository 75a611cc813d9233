import { describe, expect, it } from 'vitest';
import { growthAt } from '../../../shared/axis/growth.ts';
import { at } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Temperatures } from '../../../workers/model/state.ts';
import { Axis } from '../../../workers/run/axis.ts';
import { bareScene } from '../model/sceneOf.ts';

const AMBIENT: Temperatures = { winding: 20, carrier: 20, table: 20, screw: 20 };

describe('growth at the tool', () => {
  it('of a steel screw is 11.7 µm per metre and kelvin (handbook value, from memory)', () => {
    const { parameters: p } = bareScene({ encoderSide: 'motor', screwExpansion: 11.7e-6, screwSpan: 0.75 });
    // One metre from the fixed bearing to the nut, ten kelvin: 117 µm, and 0.01 % more for what the growth itself grows.
    const growth = growthAt(p, { ...AMBIENT, screw: 30 }, 0.25);
    expect(Math.abs(growth / 117e-6 - 1)).toBeLessThan(2e-4);
  });

  it('of the screw stays out of sight of the loop only with the encoder on the motor', () => {
    const { parameters: p } = bareScene({ encoderSide: 'load', screwExpansion: 11.7e-6 });
    expect(growthAt(p, { ...AMBIENT, screw: 30 }, 0.1)).toBe(0);
  });

  it.each<[string, ParameterChanges, Temperatures]>([
    [
      'a scale and an arm that grow',
      { scaleExpansion: 8e-6, tableExpansion: 23e-6, toolArm: 0.08 },
      { ...AMBIENT, table: 28 },
    ],
    [
      'a screw that grows, encoder on the motor',
      { lead: 0.02, rotorInertia: 1.5e-4, encoderSide: 'motor', screwExpansion: 11.7e-6, screwSpan: 0.45 },
      { ...AMBIENT, screw: 35, table: 24 },
    ],
    [
      'a screw whose stretch is used up',
      {
        ...{ lead: 0.02, rotorInertia: 1.5e-4, encoderSide: 'motor', screwExpansion: 11.7e-6 },
        // With so much capacity that it stays as warm as it is meanwhile.
        ...{ screwSpan: 0.45, screwSupport: 'fixed', screwPretension: 5, screwCapacity: 2e4 },
      },
      { ...AMBIENT, screw: 35 },
    ],
  ])('is what the running axis shows: %s', (_, changes, warm) => {
    const scene = bareScene({ program: 'hold', start: 0.12, ...changes });
    const errorAt = (temperatures: Temperatures) => {
      const axis = new Axis(scene, { temperatures });
      while (axis.time < 0.5) expect(axis.step()).toBe(true);
      return at(axis.record, C.toolError);
    };
    const shown = errorAt(AMBIENT) - errorAt(warm);
    const growth = growthAt(scene.parameters, warm, scene.parameters.start);
    expect(Math.abs(growth)).toBeGreaterThan(1e-5);
    expect(Math.abs(shown / growth - 1)).toBeLessThan(1e-3);
  });
});

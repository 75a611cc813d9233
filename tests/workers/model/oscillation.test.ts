import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { startGains } from '../../../shared/axis/loop/startGains.ts';
import { present } from '../../../shared/core/at.ts';
import { presetParameters } from '../../../shared/core/preset.ts';
import { DRIVE_TYPES } from '../../../shared/core/scene.ts';
import { Axis } from '../../../workers/run/axis.ts';
import { bareScene } from './sceneOf.ts';

describe.each(DRIVE_TYPES)('an unstable loop under the shipped limits of %s', (driveType) => {
  const preset = present(PRESETS[driveType]);
  const { parameters } = bareScene(presetParameters(preset, 1));
  const gains = startGains(parameters, preset.crossover) as Required<ReturnType<typeof startGains>>;
  const run = (factor: number, seconds: number) => {
    const axis = new Axis({
      ...bareScene(),
      parameters: {
        ...parameters,
        ...gains,
        Kp: gains.Kp * factor,
        Ki: gains.Ki * factor,
        Kd: gains.Kd * factor,
        program: 'shuttle',
        frictionCoefficient: 0,
        stictionCoefficient: 0,
        sealFriction: 0,
        sealStiction: 0,
        nutDrag: 0,
      },
    });
    while (axis.time < seconds && axis.step());
    return axis.trip;
  };

  it('trips, though its limits keep it small', () => {
    expect(run(30, 3)).not.toBeNull();
  });

  it('does not trip with its start gains', () => {
    expect(run(1, 3)).toBeNull();
  });
});

import { describe, expect, it } from 'vitest';
import { PRESETS, SCENES } from '../../../scenes/index.ts';
import { loadSideMass, motorSideMass } from '../../../shared/axis/motor.ts';
import { crossChecks } from '../../../shared/core/check.ts';
import { type Bench, benchOf, presentScene } from '../../../src/bench/bench.ts';
import { presetOf, withPreset } from '../../../src/bench/presets.ts';

const ids = Object.keys(PRESETS);
const chosen = (bench: Bench, id: string) => {
  const result = withPreset(bench, id, PRESETS);
  if ('problems' in result) throw new Error(result.problems.map(({ message }) => message).join(' '));
  return result;
};

describe.each(SCENES)('another drive in $name', ({ scene }) => {
  const bench = benchOf(scene, presetOf(scene, PRESETS));

  it.each(ids)('%s fits, is known again, and gets gains for the mass it moves', (id) => {
    const { preset, origin, parameters } = chosen(bench, id);
    expect(preset).toBe(id);
    expect(crossChecks(parameters)).toEqual([]);
    expect(presetOf(presentScene({ preset, origin, parameters }), PRESETS)).toBe(id);
    const mass = motorSideMass(parameters) + loadSideMass(parameters);
    // In the three digits that are shown.
    expect(parameters.accelerationFeedforward).toBe(Number(mass.toPrecision(3)));
    expect(parameters.stroke).toBe(scene.parameters.stroke);
  });
});

describe('choosing a drive', () => {
  const { scene } = SCENES[0];

  it('leaves nothing of the drive before', () => {
    const once = chosen(benchOf(scene, null), 'tubular');
    const roundabout = chosen(chosen(chosen(benchOf(scene, null), 'flat'), 'screw'), 'tubular');
    expect(roundabout.parameters).toEqual(once.parameters);
    expect(roundabout.origin.driveType).toBe('tubular');
  });

  it('keeps what was changed of the job, marked as changed', () => {
    const bench = benchOf(scene, null);
    const { origin, parameters } = chosen(
      { ...bench, parameters: { ...bench.parameters, payload: 3.21 } },
      'flat',
    );
    expect(parameters.payload).toBe(3.21);
    expect(origin.parameters.payload).toBe(scene.parameters.payload);
  });

  it('names what does not fit and changes nothing', () => {
    const bench = benchOf(
      { ...scene, parameters: { ...scene.parameters, encoderResolution: 1e-5, signalPeriod: 1e-4 } },
      null,
    );
    const contradiction = { odd: { ...PRESETS.tubular, parameters: { signalPeriod: 1e-6 } } };
    const result = withPreset(bench, 'odd', contradiction);
    expect('problems' in result && result.problems.map(({ field }) => field)).toContain('signalPeriod');
  });

  it('is "own drive" once the motor itself is changed', () => {
    const { origin, parameters } = chosen(benchOf(scene, null), 'tubular');
    expect(presetOf({ ...origin, parameters: { ...parameters, forceConstant: 61 } }, PRESETS)).toBeNull();
    expect(presetOf({ ...origin, parameters: { ...parameters, Kp: 1e5 } }, PRESETS)).toBe('tubular');
  });
});

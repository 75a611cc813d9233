import { describe, expect, it } from 'vitest';
import { DEFAULT_SCENE, PRESETS, SCENES } from '../../../scenes/index.ts';
import { loadSideMass, motorSideMass } from '../../../shared/axis/motor.ts';
import { crossChecks } from '../../../shared/core/check.ts';
import { type Bench, benchOf } from '../../../src/bench/bench.ts';
import { withPreset } from '../../../src/bench/presets.ts';

const ids = Object.keys(PRESETS);
const chosen = (bench: Bench, id: string) => {
  const result = withPreset(bench, id, PRESETS);
  if ('problems' in result) throw new Error(result.problems.map(({ message }) => message).join(' '));
  return result;
};

describe.each(SCENES)('another drive in $id', (scene) => {
  const bench = benchOf(scene);

  it.each(ids)('%s fits, is known by its id, and gets gains for the mass it moves', (id) => {
    const { origin, parameters } = chosen(bench, id);
    expect(origin).toMatchObject({ preset: id, driveType: PRESETS[id]?.driveType, id: scene.id });
    expect(crossChecks(parameters)).toEqual([]);
    const mass = motorSideMass(parameters) + loadSideMass(parameters);
    // In the three digits that are shown.
    expect(parameters.accelerationFeedforward).toBe(Number(mass.toPrecision(3)));
    expect(parameters.stroke).toBe(scene.parameters.stroke);
  });
});

describe('choosing a drive', () => {
  const scene = DEFAULT_SCENE;

  it('leaves nothing of the drive before', () => {
    const once = chosen(benchOf(scene), 'tubular');
    const roundabout = chosen(chosen(chosen(benchOf(scene), 'flat'), 'screw'), 'tubular');
    expect(roundabout.parameters).toEqual(once.parameters);
    expect(roundabout.origin.driveType).toBe('tubular');
  });

  it('keeps what was changed of the job, marked as changed', () => {
    const bench = benchOf(scene);
    const { origin, parameters } = chosen(
      { ...bench, parameters: { ...bench.parameters, payload: 3.21 } },
      'flat',
    );
    expect(parameters.payload).toBe(3.21);
    expect(origin.parameters.payload).toBe(scene.parameters.payload);
  });

  it('names what does not fit and changes nothing', () => {
    const bench = benchOf({
      ...scene,
      parameters: { ...scene.parameters, encoderResolution: 1e-5, signalPeriod: 1e-4 },
    });
    const contradiction = { odd: { ...PRESETS.tubular, parameters: { signalPeriod: 1e-6 } } };
    const result = withPreset(bench, 'odd', contradiction);
    expect('problems' in result && result.problems.map(({ field }) => field)).toContain('signalPeriod');
  });
});

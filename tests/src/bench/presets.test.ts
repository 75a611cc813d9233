import { describe, expect, it } from 'vitest';
import { DEFAULT_SCENE, PRESETS, SCENES, sceneById } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import { crossChecks } from '../../../shared/core/crossChecks.ts';
import { loadSideMass, motorSideMass } from '../../../shared/core/movedMass.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { problemTexts } from '../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { type Bench, benchOf } from '../../../src/bench/bench.ts';
import { basedOn, withPreset } from '../../../src/bench/presets.ts';

const ids = Object.keys(PRESETS);
const chosen = (bench: Bench, id: string) => {
  const result = withPreset(bench, id, PRESETS);
  if ('problems' in result) throw new Error(problemTexts(result.problems, AS_WRITTEN).join(' '));
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
    const contradiction = { odd: { ...present(PRESETS.tubular), parameters: { signalPeriod: 1e-6 } } };
    const result = withPreset(bench, 'odd', contradiction);
    expect('problems' in result && result.problems.map(({ field }) => field)).toContain('signalPeriod');
  });
});

describe('what a drive is based on', () => {
  const based = (id: string, changes: ParameterChanges = {}) => {
    const scene = sceneById(id);
    return basedOn({ ...scene, parameters: { ...scene.parameters, ...changes } }, PRESETS);
  };

  it('goes without saying for a drive as it is on the shelf, however many there are of it', () => {
    expect(based('mould-shuttle')).toBeNull();
    expect(based('mould-shuttle', { Kp: 1e5, payload: 9 })).toBeNull();
    expect(based('four-motors-one-misaligned')).toBeNull();
  });

  it('is said once a value of the drive is another, also of its motor, with what it was', () => {
    expect(based('mould-shuttle', { forceConstant: 61 })).toEqual({
      summary: 'Based on Tubular motor, ironless, 1 value changed',
      changes: ['Force constant: 61 N/A instead of 60 N/A'],
    });
    expect(based('soft-coil-mounting')).toMatchObject({
      summary: 'Based on U-channel motor, ironless, 2 values changed',
      changes: [
        expect.stringMatching(/^Link stiffness: 2\.5 N\/µm instead of/),
        expect.stringMatching(/^Link damping:/),
      ],
    });
  });

  it('counts what belongs to another number of motors', () => {
    const { changes } = based('mould-shuttle', { motorCount: 2 }) ?? {};
    expect(changes).toContain('Continuous current: 7.5 A peak instead of 15 A peak');
  });

  it('is nothing for a drive of no preset', () => {
    const own = { ...DEFAULT_SCENE, parameters: { ...DEFAULT_SCENE.parameters, forceConstant: 61 } };
    expect(basedOn({ ...own, preset: null }, PRESETS)).toBeNull();
    expect(basedOn({ ...own, preset: 'constructor' }, PRESETS)).toBeNull();
  });
});

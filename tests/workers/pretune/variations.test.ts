import { describe, expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import { crossChecks } from '../../../shared/core/crossChecks.ts';
import { loopRows } from '../../../shared/core/parameters/drive.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { plantResponse } from '../../../workers/pretune/plantResponse.ts';
import { VARIATIONS } from '../../../workers/pretune/variations.ts';
import { recordedRun, shelfScene } from '../../scenes/runs.ts';

const varied = (p: Parameters, name: string): Parameters => {
  const variation = VARIATIONS.find((each) => each.name === name);
  if (!variation) throw new Error(`no variation ${name}`);
  return { ...p, ...variation.changes(p) };
};

describe.each(SCENES)('variations of $id', ({ parameters: p }) => {
  it('are legal, and leave the controller alone', () => {
    for (const { changes } of VARIATIONS) {
      const made = changes(p);
      expect(checkParameters(made, p).problems).toEqual([]);
      expect(crossChecks({ ...p, ...made })).toEqual([]);
      for (const name of [...Object.keys(loopRows), 'forceConstant', 'torqueConstant', 'currentBandwidth'])
        expect(Object.keys(made)).not.toContain(name);
    }
  });

  it('move the resonances of the sliding axis by 15 %', () => {
    // A cogging detent is a spring of the magnets, not of the drive.
    const still = { ...p, cogging1: 0, cogging2: 0, cogging3: 0 };
    const modes = (parameters: Parameters) =>
      plantResponse(parameters, 10).sliding.modes.map(({ frequency }) => frequency);
    const usual = modes(still);
    expect(usual.length).toBeGreaterThan(0);
    for (const [name, factor] of [
      ['Resonance +15 %', 1.15],
      ['Resonance −15 %', 0.85],
    ] as const)
      for (const [k, frequency] of modes(varied(still, name)).entries())
        expect(frequency / at(usual, k)).toBeCloseTo(factor, 2);
  });
});

describe('the hot machine', () => {
  it.each(['mould-shuttle', 'free-pull-iron', 'screw-backlash'])(
    'of %s gives 15 % less force per ampere',
    (name) => {
      const scene = shelfScene(name, {
        drive: 'on',
        program: 'hold',
        process: 'constant',
        processForce: 10,
        Ki: 1e9,
        ripple6: 0,
        ripple12: 0,
      });
      const forcePerAmp = (parameters: Parameters) => {
        const last = present(recordedRun({ ...scene, parameters }, 0.3).samples.at(-1));
        return at(last, C.motorForce) / at(last, C.forceCurrent);
      };
      const p = scene.parameters;
      expect(forcePerAmp(varied(p, 'Force constant −15 %, hot')) / forcePerAmp(p)).toBeCloseTo(0.85, 3);
    },
  );
});

import { describe, expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { defaultParameters, type ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { compareMoves, compareParameters } from '../../../shared/figures/comparison.ts';
import { compareLoops } from '../../../shared/figures/loopComparison.ts';
import { LOOP_FIGURE_NAMES, LOOP_FIGURES } from '../../../shared/figures/loopFigures.ts';
import type { LoopFigures } from '../../../shared/protocol/analysis.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import type { MoveFigures } from '../../../shared/protocol/axis.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';

const p = { ...defaultParameters(), encoderResolution: 1e-8 };

const move: MoveFigures = {
  index: 3,
  duration: 0.4,
  riseTime: null,
  settlingTime: 0.02,
  overshoot: 2e-6,
  peakError: 7.84e-6,
  rmsError: 3e-6,
  velocityRipplePeak: 0.004,
  velocityRippleRms: 0.001,
  peakForce: 180,
  rmsForce: 95,
  peakCurrent: 4.5,
  rmsCurrent: 2.3,
  currentHeadroom: 0.78,
  voltageHeadroom: 0.81,
  copperLoss: 19,
};

/** The line of one figure after a move that differs from the one above. */
function lineOf(changes: Partial<MoveFigures>, label: string) {
  return present(
    compareMoves(move, { ...move, index: 4, ...changes }, p).find((each) => each.label === label),
  );
}

describe('two moves', () => {
  it('that are alike differ in nothing', () => {
    const lines = compareMoves(move, { ...move, index: 9 }, p);
    expect(lines.map(({ verdict }) => verdict)).toEqual(lines.map(() => 'same'));
    expect(lines.every(({ change }) => change === null || change === 0)).toBe(true);
  });

  it.each([
    [{ peakError: 3.92e-6 }, 'Following error, peak', '7.84 µm', '3.92 µm', -0.5, 'better'],
    [{ rmsForce: 190 }, 'Force, RMS', '95.0 N', '190 N', 1, 'worse'],
    [{ voltageHeadroom: 0.405 }, 'Voltage headroom', '81.0 %', '40.5 %', -0.5, 'worse'],
    [{ currentHeadroom: 0.9 }, 'Current headroom', '78.0 %', '90.0 %', 0.1538, 'better'],
    [{ duration: 0.2 }, 'Duration', '400 ms', '200 ms', -0.5, 'changed'],
    [{ settlingTime: null }, 'Settling time', '20.0 ms', 'not settled', null, 'worse'],
    [{ riseTime: 0.004 }, 'Rise time', '—', '4.00 ms', null, 'changed'],
    [{ overshoot: 0 }, 'Overshoot', '2.00 µm', '0.00 nm', -1, 'better'],
  ] as const)('%j: %s goes from %s to %s', (changes, label, before, after, change, verdict) => {
    const line = lineOf(changes, label);
    expect({ ...line, change: line.change === null ? null : Number(line.change.toFixed(4)) }).toEqual({
      label,
      before,
      after,
      change,
      verdict,
    });
  });

  it('one that settles is better than one that did not', () => {
    const [, , settling] = compareMoves({ ...move, settlingTime: null }, move, p);
    expect(present(settling).verdict).toBe('better');
    const both = { ...move, settlingTime: null };
    expect(at(compareMoves(both, both, p), 2).verdict).toBe('same');
  });

  // What a measurement cannot tell apart, one encoder count of 10 nm or one period of 125 µs, and what nobody would retune for: 1 %.
  it.each([
    [{ peakError: 7.84e-6 + 0.99e-8 }, 'Following error, peak', 'same'],
    [{ peakError: 1.007 * 7.84e-6 }, 'Following error, peak', 'same'],
    [{ peakError: 1.02 * 7.84e-6 }, 'Following error, peak', 'worse'],
    [{ settlingTime: 0.02 - 0.00012 }, 'Settling time', 'same'],
    [{ settlingTime: 0.02 - 0.0003 }, 'Settling time', 'better'],
    [{ settlingTime: 0 }, 'Settling time', 'better'],
    [{ rmsForce: 95.04 }, 'Force, RMS', 'same'],
    [{ rmsForce: 96.5 }, 'Force, RMS', 'worse'],
  ])('%j: %s is the %s within the resolution', (changes, label, verdict) => {
    expect(lineOf(changes, label).verdict).toBe(verdict);
  });

  it('of a run show what a change of the gains did', () => {
    const scene = DEFAULT_SCENE;
    const run = (changes: ParameterChanges) =>
      at(measureRun({ ...scene, parameters: { ...scene.parameters, ...changes } }, 0.9).moves, 0);
    const without = compareMoves(run({}), run({ accelerationFeedforward: 0 }), scene.parameters);
    const error = present(without.find(({ label }) => label === 'Following error, peak'));
    expect(error.verdict).toBe('worse');
    expect(present(error.change)).toBeGreaterThan(1);
  });
});

describe('two loops', () => {
  const { parameters } = DEFAULT_SCENE;
  const figures = (changes: ParameterChanges): LoopFigures => {
    const changed = { ...parameters, ...changes };
    return analyse(changed, startingPoint(changed)).figures;
  };

  it('a low-pass takes phase, gain, delay and modulus margin', () => {
    const verdicts = compareLoops(figures({}), figures({ filter3: 'low-pass', filter3Frequency: 500 }));
    for (const name of [
      'phaseMargin',
      'gainMargin',
      'delayMargin',
      'modulusMargin',
      'closedLoopPeak',
    ] as const)
      expect(verdicts[name]).toBe('worse');
    expect(verdicts.staticStiffness).toBe('same');
  });

  it('an integrator makes the standstill stiffness unlimited, which is better', () => {
    expect(compareLoops(figures({ Ki: 0 }), figures({})).staticStiffness).toBe('better');
    expect(compareLoops(figures({}), figures({ Ki: 0 })).staticStiffness).toBe('worse');
  });

  it('a difference that the digits shown do not tell is none', () => {
    const alike = compareLoops(figures({}), figures({ Kp: parameters.Kp * (1 + 1e-6) }));
    expect(new Set(Object.values(alike))).toEqual(new Set(['same']));
  });

  it('of an unstable loop nothing is better or worse', () => {
    const unstable = figures({ Kp: 50 * parameters.Kp });
    expect(unstable.stable).toBe(false);
    for (const [before, after] of [
      [figures({}), unstable],
      [unstable, figures({})],
    ] as const) {
      const verdicts = Object.values(compareLoops(before, after));
      expect(verdicts).toContain('changed');
      expect(verdicts).not.toContain('better');
      expect(verdicts).not.toContain('worse');
    }
  });

  it('every figure is defined in words', () => {
    for (const name of LOOP_FIGURE_NAMES) expect(LOOP_FIGURES[name].definition).toMatch(/^.{12,}[.]$/);
  });
});

describe('two sets of parameters', () => {
  it('differ where they differ, in the units of the table', () => {
    const before = defaultParameters();
    const after = {
      ...before,
      payload: 6,
      filter1: 'notch',
      program: 'scan',
      backlash: 2e-6,
      Kp: 5.6e6,
    } as const;
    expect(compareParameters(before, after)).toEqual([
      {
        name: 'Kp',
        label: 'Position gain',
        before: '2.8·10⁶ N/m',
        after: '5.6·10⁶ N/m',
        change: 1,
        verdict: 'changed',
      },
      { name: 'filter1', label: 'Filter 1', before: 'off', after: 'notch', change: null, verdict: 'changed' },
      {
        name: 'program',
        label: 'Program',
        before: 'shuttle',
        after: 'scan',
        change: null,
        verdict: 'changed',
      },
      { name: 'payload', label: 'Payload', before: '5 kg', after: '6 kg', change: 0.2, verdict: 'changed' },
      { name: 'backlash', label: 'Backlash', before: 'off', after: '2 µm', change: null, verdict: 'changed' },
    ]);
    expect(compareParameters(before, { ...before })).toEqual([]);
  });
});

import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import type { Estimate, FitResult, FittedName } from '../../../shared/protocol/fit.ts';
import type { Trace } from '../../../shared/protocol/trace.ts';
import { fitTrace } from '../../../workers/identify/fitModel.ts';
import { exportedTrace, guessOf, sceneWith, truthsOf } from './trials.ts';

const QUICK: ParameterChanges = { dwell: 0.02 };

function run(name: string, changes: ParameterChanges, seconds: number): { p: Parameters; trace: Trace } {
  const scene = sceneWith(name, changes);
  return { p: scene.parameters, trace: exportedTrace(scene, seconds) };
}

const shuttle = run('mould-shuttle', QUICK, 0.5);

const holds = ({ low, high }: Estimate, truth: number) => low <= truth && truth <= high;
const halfWidth = ({ low, high }: Estimate) => (high - low) / 2;

function expectAllHeld(fit: FitResult, p: Parameters, names: readonly FittedName[]): void {
  const truths = truthsOf(p);
  for (const name of names) {
    const estimate = fit.estimates[name];
    expect(estimate, name).toBeDefined();
    expect(
      holds(present(estimate), truths[name]),
      `${name}: ${JSON.stringify(estimate)} and ${truths[name]}`,
    ).toBe(true);
  }
}

/** Every n-th sample, as a slower recorder has them. */
function thinned(trace: Trace, n: number): Trace {
  const thin = <T extends Float64Array | null>(values: T) =>
    values && (values.filter((_, k) => k % n === 0) as T);
  return {
    ...trace,
    period: trace.period * n,
    position: thin(trace.position),
    current: thin(trace.current),
    currentCommand: thin(trace.currentCommand),
    setpoint: thin(trace.setpoint),
    motorPosition: thin(trace.motorPosition),
    tablePosition: thin(trace.tablePosition),
  };
}

/** The part of a trace between two times, s. */
function cut(trace: Trace, from: number, to: number): Trace {
  const [a, b] = [from, to].map((t) => Math.round(t / trace.period)) as [number, number];
  const part = <T extends Float64Array | null>(values: T) => values && (values.slice(a, b) as T);
  return {
    ...trace,
    start: trace.start + from,
    position: part(trace.position),
    current: part(trace.current),
    currentCommand: part(trace.currentCommand),
    setpoint: part(trace.setpoint),
    motorPosition: part(trace.motorPosition),
    tablePosition: part(trace.tablePosition),
  };
}

const IN_MOTION = ['mass', 'coulomb', 'viscous', 'bias', 'delay', 'linkStiffness'] as const;

describe('an undisturbed run of the simulator', () => {
  it.each<[string, ParameterChanges, number]>([
    ['mould-shuttle', QUICK, 0.5],
    ['mould-shuttle', { program: 'sine', sineAmplitude: 0.05, sineFrequency: 4 }, 0.6],
    ['soft-coil-mounting', QUICK, 1],
    ['vertical-counterbalance', QUICK, 0.8],
    ['soft-base', QUICK, 0.8],
    ['four-motors-one-misaligned', QUICK, 0.8],
    [
      'slow-scan-iron',
      { ...QUICK, program: 'shuttle', start: -0.1, stroke: 0.2, speed: 1, acceleration: 10, jerk: 500 },
      0.6,
    ],
  ])('of %s (%o) is recovered', (name, changes, seconds) => {
    const { p, trace } = run(name, changes, seconds);
    const fit = fitTrace(trace, guessOf(p));
    expectAllHeld(fit, p, IN_MOTION);
    const mass = truthsOf(p).mass;
    // The temperature of the magnets is all that is not known: ±0.11 % of the mass, and the fit itself is far better.
    expect(halfWidth(present(fit.estimates.mass))).toBeLessThan(0.0012 * mass);
    expect(Math.abs(present(fit.estimates.mass).value - mass)).toBeLessThan(0.0005 * mass);
    expect(present(fit.goodness).explained).toBeGreaterThan(0.99999);
    expect(present(fit.goodness).verdict).not.toBe('poor');
  });

  it.each<[string, Trace]>([
    ['recorded at an eighth of the rate', thinned(run('mould-shuttle', QUICK, 1).trace, 8)],
    ['with the command recorded in place of the current', { ...shuttle.trace, current: null }],
    [
      'with a piece missing',
      {
        ...shuttle.trace,
        position: shuttle.trace.position.map((x, k) => (k > 900 && k < 940 ? Number.NaN : x)),
      },
    ],
    ['that starts in mid-move', cut(shuttle.trace, 0.1, 0.5)],
  ])('%s is recovered', (_case, trace) => {
    expectAllHeld(fitTrace(trace, guessOf(shuttle.p)), shuttle.p, ['mass', 'coulomb', 'viscous', 'bias']);
  });

  it('read by a coarse encoder is fitted over longer windows', () => {
    const coarse = run(
      'mould-shuttle',
      { ...QUICK, encoderResolution: 1e-6, Kp: 5e5, Ki: 1e7, Kd: 3000, derivativeTime: 1e-3 },
      0.6,
    );
    const fit = fitTrace(coarse.trace, guessOf(coarse.p));
    expectAllHeld(fit, coarse.p, ['mass', 'coulomb', 'viscous', 'bias']);
    expect(present(fit.forces).window).toBeGreaterThan(
      present(fitTrace(shuttle.trace, shuttle.p).forces).window,
    );
  });
});

describe('mass and force constant', () => {
  const wrong = { ...guessOf(shuttle.p), forceConstant: 1.1 * shuttle.p.forceConstant };

  it('are told as one figure by one run: a force constant 10 % too high makes all forces and masses so, and it is said', () => {
    const [right, high] = [guessOf(shuttle.p), wrong].map((p) => fitTrace(shuttle.trace, p)) as [
      FitResult,
      FitResult,
    ];
    for (const name of ['mass', 'coulomb', 'viscous'] as const) {
      expect(present(high.estimates[name]).value / present(right.estimates[name]).value).toBeCloseTo(1.1, 9);
    }
    expect(high.unfitted.forceConstant).toMatch(/^Taken as known/);
  });

  it('widen with the tolerance that is given to what is known', () => {
    const fit = fitTrace(shuttle.trace, shuttle.p, { known: { kind: 'force constant', tolerance: 0.05 } });
    expect(halfWidth(present(fit.estimates.mass)) / present(fit.estimates.mass).value).toBeCloseTo(0.05, 3);
  });

  it('are told apart by a known mass', () => {
    const fit = fitTrace(shuttle.trace, wrong, { known: { kind: 'mass', mass: truthsOf(shuttle.p).mass } });
    expectAllHeld(fit, shuttle.p, ['forceConstant', 'coulomb', 'viscous', 'bias', 'linkStiffness']);
    expect(fit.unfitted.mass).toMatch(/^Taken as known/);
  });

  it('are told apart by a second run with 3 kg added', () => {
    const loaded = run('mould-shuttle', { ...QUICK, payload: shuttle.p.payload + 3 }, 0.5);
    const fit = fitTrace(shuttle.trace, wrong, {
      known: { kind: 'added mass', trace: loaded.trace, mass: 3 },
    });
    expectAllHeld(fit, shuttle.p, ['mass', 'forceConstant', 'coulomb', 'viscous', 'bias']);
    expect(halfWidth(present(fit.estimates.mass))).toBeLessThan(0.01 * truthsOf(shuttle.p).mass);
  });
});

describe('what a trace does not show is not made up', () => {
  it('when the table stands', () => {
    const { p, trace } = run('mould-shuttle', { program: 'hold' }, 0.3);
    const fit = fitTrace(trace, p);
    for (const name of ['mass', 'coulomb', 'viscous', 'bias'] as const) {
      expect(fit.estimates[name]).toBeUndefined();
      expect(fit.unfitted[name]).toMatch(
        /slides clear of breakaway in only 0 windows of 20 ms, and 36 are needed/,
      );
    }
    expect(fit.estimates.linkStiffness).toBeUndefined();
    expect([fit.forces, fit.goodness, fit.resonance]).toEqual([null, null, null]);
  });

  it('when the table moves one way only: friction needs the load then', () => {
    const fit = fitTrace(cut(shuttle.trace, 0, 0.34), shuttle.p);
    expect(fit.unfitted.bias).toMatch(/one direction only/);
    expectAllHeld(fit, shuttle.p, ['mass', 'coulomb', 'viscous']);
  });

  it('when only one of current and command is there', () => {
    expect(fitTrace({ ...shuttle.trace, currentCommand: null }, shuttle.p).unfitted.delay).toMatch(/both/);
  });

  it('when the parameters have no lost motion', () => {
    expect(fitTrace(shuttle.trace, shuttle.p).unfitted.backlash).toMatch(/enter some/);
  });

  it.each<[string, string, ParameterChanges, RegExp]>([
    ['a sweep ends below the resonance', 'mould-shuttle', { sweepTo: 600 }, /^No resonance between/],
    ['lost motion bends a sweep', 'screw-backlash', { sweepTo: 1500 }, /^With lost motion/],
    ['drag of the iron takes the force of a sweep', 'slow-scan-iron', { sweepForce: 3 }, /^The dry drag/],
  ])('when %s', (_case, name, changes, reason) => {
    const { p, trace } = run(
      name,
      { program: 'chirp', sweepForce: 40, sweepFrom: 20, sweepTime: 0.4, dwell: 0.02, ...changes },
      0.44,
    );
    const fit = fitTrace({ ...trace, motorPosition: null, tablePosition: null }, p);
    expect(fit.unfitted.linkStiffness).toMatch(reason);
  });
});

describe('a disturbance that the model does not have', () => {
  const disturbed = run(
    'mould-shuttle',
    { ...QUICK, process: 'sine', processForce: 15, processFrequency: 17 },
    0.8,
  );
  const fit = fitTrace(disturbed.trace, guessOf(disturbed.p));
  const calm = fitTrace(shuttle.trace, guessOf(shuttle.p));

  it('is seen in the residual: its size, its colour, and the verdict', () => {
    const { goodness, forces, notes } = fit;
    expect(present(goodness).verdict).toBe('poor');
    expect(present(goodness).whiteness).toBeGreaterThan(present(goodness).whiteLimit);
    // 15 N sine, less what the windows of 20 ms average away and the fit takes for its own.
    expect(present(goodness).rmsResidual).toBeGreaterThan(0.5 * (15 / Math.SQRT2));
    expect(present(goodness).rmsResidual).toBeLessThan(15 / Math.SQRT2);
    expect(
      present(forces).residual.every(
        (r, k) => r === at(present(forces).measured, k) - at(present(forces).model, k),
      ),
    ).toBe(true);
    expect(notes.join(' ')).toMatch(
      /process force is not in the model.*a force acts that it does not contain/,
    );
  });

  it('widens the intervals until they hold the truth', () => {
    expectAllHeld(fit, disturbed.p, ['mass', 'coulomb', 'viscous', 'bias']);
    expect(halfWidth(present(fit.estimates.coulomb))).toBeGreaterThan(
      100 * halfWidth(present(calm.estimates.coulomb)),
    );
  });
});

describe('the result', () => {
  const fit = fitTrace(shuttle.trace, guessOf(shuttle.p));

  it('has a residual over the time of the trace, and says which of it was fitted', () => {
    const { time, used, model, window } = present(fit.forces);
    expect(time[0]).toBeCloseTo(shuttle.trace.start + window / 2, 12);
    expect(time.at(-1)).toBeLessThanOrEqual(0.5 - window / 2);
    expect(model).toHaveLength(time.length);
    // The table stands for the first and between the moves.
    const fitted = [...used].filter((one) => one === 1).length;
    expect(used[0]).toBe(0);
    expect(fitted).toBeGreaterThan(0.5 * used.length);
    expect(fitted).toBeLessThan(used.length);
  });

  it('comes as legal changes to the parameters, which then say what was fitted', () => {
    const guess = guessOf(shuttle.p);
    const checked = checkParameters(fit.changes, guess);
    expect(checked.problems).toEqual([]);
    const fitted = truthsOf({ ...guess, ...checked.changes });
    for (const name of ['mass', 'coulomb', 'viscous', 'bias', 'linkStiffness'] as const) {
      expect(fitted[name], name).toBeCloseTo(present(fit.estimates[name]).value, 6);
    }
    expect(fitted.delay / truthsOf(shuttle.p).delay).toBeCloseTo(1, 1);
  });
});

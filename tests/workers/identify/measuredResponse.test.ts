import { describe, expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import { movedMass } from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import type { MeasuredResponse, ResponseKind } from '../../../shared/protocol/response.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { PositionController } from '../../../workers/analysis/positionController.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { NormalNoise } from '../../../workers/control/noise.ts';
import { takeResponse } from '../../../workers/identify/measuredResponse.ts';
import {
  type Complex,
  magnitude,
  minus,
  ONE,
  over,
  plus,
  scaled,
  times,
  unit,
} from '../../../workers/math/complex.ts';
import { logSpaced } from '../../../workers/math/logSpaced.ts';
import { rms } from '../../../workers/math/statistics.ts';
import { bareScene } from '../model/sceneOf.ts';

/** The loop of an axis as it would be measured: with 2 % and 1° of noise on every point. */
function measured(p: Parameters, kind: ResponseKind, noisy = true): MeasuredResponse {
  const loop = new SampledLoop(p, { ...startingPoint(p), friction: 'sliding' });
  const controller = new PositionController(p);
  const noise = new NormalNoise(3);
  const omega = logSpaced(2 * Math.PI * 8, 2 * Math.PI * 2500, 160);
  const values = omega.map((w): Complex => {
    const L = loop.openLoop(w);
    const { position, speed } = controller.feedback(unit(w * controller.period));
    const C = scaled(plus(position, speed), 1 / controller.perForce);
    const value = kind === 'open loop' ? L : kind === 'sensitivity' ? over(ONE, plus(ONE, L)) : over(L, C);
    const [size, angle] = noisy ? [1 + 0.02 * noise.next(), (Math.PI / 180) * noise.next()] : [1, 0];
    return times(value, { re: size * Math.cos(angle), im: size * Math.sin(angle) });
  });
  return {
    kind,
    frequency: Float64Array.from(omega, (w) => w / (2 * Math.PI)),
    re: Float64Array.from(values, ({ re }) => re),
    im: Float64Array.from(values, ({ im }) => im),
  };
}

const soft = sceneById('soft-coil-mounting').parameters;

describe('a measured response', () => {
  it.each(['open loop', 'sensitivity', 'plant'] as const)('as %s gives back the open loop', (kind) => {
    const { loop } = takeResponse(soft, measured(soft, kind, false));
    const model = new SampledLoop(soft, { ...startingPoint(soft), friction: 'sliding' });
    loop.frequency.forEach((f, k) => {
      const value = model.openLoop(2 * Math.PI * f);
      expect(at(loop.openLoop.magnitude, k) / magnitude(value)).toBeCloseTo(1, 6);
    });
    expect(loop.frequency.length).toBeGreaterThan(100);
  });

  // The analytic plant has a mass, a link and a delay that are known; the model on the bench says otherwise and must not matter.
  it('finds mass and resonance of the axis through noise, from a bench that is wrong about both', () => {
    const wrong = { ...soft, payload: soft.payload + 4, linkStiffness: 4 * soft.linkStiffness };
    const { fit } = takeResponse(wrong, { ...measured(soft, 'plant') });
    if (typeof fit === 'string') throw new Error(fit);
    expect(fit.mass / movedMass(soft)).toBeCloseTo(1, 1);
    expect(fit.link).not.toBeNull();
    expect(Math.abs((fit.link?.stiffness ?? 0) / soft.linkStiffness - 1)).toBeLessThan(0.02);
    // Half a sample of hold, beside what the current loop takes.
    const hold = 0.5 / (soft.currentRate / soft.positionDivider);
    expect(fit.delay / hold).toBeGreaterThan(0.5);
    expect(fit.delay / hold).toBeLessThan(1.5);
    const mended = { ...wrong, ...fit.changes };
    expect(movedMass(mended) / movedMass(soft)).toBeCloseTo(1, 1);
  });

  // The machine has a link and two flexible parts; the bench knows of neither part. Anti-resonance of a part at its own frequency and
  // resonance at f √(1 + m_f/m*): den Hartog, Mechanical Vibrations, 4th ed. 1956, 3.2.
  const FLEXIBLE = {
    mode1: 'table',
    mode1Mass: 3,
    mode1Frequency: 42,
    mode1Damping: 0.02,
    mode2: 'table',
    mode2Mass: 1.5,
    mode2Frequency: 150,
    mode2Damping: 0.015,
  } as const;

  it('has as many resonances as it shows, each with mass, frequency and damping', () => {
    const machine = { ...soft, ...FLEXIBLE };
    const { fit } = takeResponse(soft, measured(machine, 'plant'));
    if (typeof fit === 'string') throw new Error(fit);
    expect(fit.link).not.toBeNull();
    expect(Math.abs((fit.link?.stiffness ?? 0) / soft.linkStiffness - 1)).toBeLessThan(0.05);
    expect(fit.modes.map(({ side }) => side)).toEqual(['table', 'table']);
    const [first, second] = fit.modes;
    expect(Math.abs((first?.frequency ?? 0) / 42 - 1)).toBeLessThan(0.01);
    expect(Math.abs((second?.frequency ?? 0) / 150 - 1)).toBeLessThan(0.01);
    expect(Math.abs((first?.mass ?? 0) / 3 - 1)).toBeLessThan(0.1);
    expect(Math.abs((second?.mass ?? 0) / 1.5 - 1)).toBeLessThan(0.1);
    expect(Math.abs((first?.dampingRatio ?? 0) / 0.02 - 1)).toBeLessThan(0.25);

    // Each part that was taken explains much of what was left; one more would not.
    const errors = fit.tried.filter(({ link }) => link).map(({ error }) => error);
    expect(errors.length).toBeGreaterThanOrEqual(4);
    expect(at(errors, 2)).toBeLessThan(0.5 * at(errors, 0));
    expect(at(errors, 3)).toBeGreaterThan(0.7 * at(errors, 2));

    // On the bench, the values are those of the machine: the model then has its response.
    const mended = { ...soft, ...fit.changes };
    expect(checkParameters(fit.changes, soft).problems).toEqual([]);
    const [plant, truth] = [measured(mended, 'plant', false), measured(machine, 'plant', false)];
    const off = plant.re.map((re, k) =>
      Math.log(Math.hypot(re, at(plant.im, k)) / Math.hypot(at(truth.re, k), at(truth.im, k))),
    );
    expect(rms(off)).toBeLessThan(0.03);
  });

  // Up to half the rate of the loop and without any noise: what sampling makes of the last octave is no part of the machine.
  it('finds the link alone where there is nothing else, however far the points go', () => {
    const analysis = analyse(soft, { ...startingPoint(soft), friction: 'sliding' });
    const { frequency, nyquistRe: re, nyquistIm: im } = analysis;
    const wrong = { ...soft, payload: soft.payload + 2, linkStiffness: 2 * soft.linkStiffness };
    const { fit } = takeResponse(wrong, { kind: 'open loop', frequency, re, im });
    if (typeof fit === 'string') throw new Error(fit);
    expect(fit.modes).toEqual([]);
    expect(Math.abs((fit.link?.stiffness ?? 0) / soft.linkStiffness - 1)).toBeLessThan(0.02);
  });

  it('of a machine without the parts of the bench switches them off', () => {
    const { fit } = takeResponse({ ...soft, ...FLEXIBLE }, measured(soft, 'plant'));
    if (typeof fit === 'string') throw new Error(fit);
    expect(fit.modes).toEqual([]);
    expect(fit.changes).toMatchObject({ mode1: 'off', mode2: 'off' });
  });

  it('of a rigid axis has no link that nobody can see', () => {
    const { parameters: rigid } = bareScene({ linkStiffness: 2e9, linkDamping: 2e4 });
    const { fit } = takeResponse(rigid, measured(rigid, 'plant'));
    if (typeof fit === 'string') throw new Error(fit);
    expect(fit.link).toBeNull();
    expect(fit.mass / movedMass(rigid)).toBeCloseTo(1, 1);
  });

  it('in the wrong unit, or with too few points, is refused', () => {
    const plant = measured(soft, 'plant');
    const inMicrometres = { ...plant, re: plant.re.map((x) => 1e6 * x), im: plant.im.map((x) => 1e6 * x) };
    expect(takeResponse(soft, inMicrometres).fit).toMatch(/below that of the motor alone: check its unit/);
    const short = { ...plant, frequency: plant.frequency.subarray(0, 5) };
    expect(() => takeResponse(soft, short)).toThrow(/5 points .* at least 12/);
  });

  it('that is taken for another kind than it is, is laid over the loop but not fitted', () => {
    const open = measured(soft, 'open loop');
    expect(takeResponse(soft, { ...open, kind: 'sensitivity' }).fit).toMatch(/check which kind of response/);
  });

  it('of a sensitivity of 1 means no loop at all', () => {
    const plain = measured(soft, 'sensitivity', false);
    const { loop } = takeResponse(soft, { ...plain, re: plain.re.map(() => 1), im: plain.im.map(() => 0) });
    expect(Math.max(...loop.openLoop.magnitude)).toBe(magnitude(minus(over(ONE, ONE), ONE)));
  });
});

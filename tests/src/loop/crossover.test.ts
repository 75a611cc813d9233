import { describe, expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import { defaultParameters, type Parameters } from '../../../shared/core/parameters/table.ts';
import { DRIVE_TYPES } from '../../../shared/core/scene.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { controllerGain } from '../../../src/loop/handles/controllerGain.ts';
import { gainsForCrossover, movedGains } from '../../../src/loop/handles/shapeCrossover.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { PositionController } from '../../../workers/analysis/positionController.ts';
import { magnitude, plus, unit } from '../../../workers/math/complex.ts';

const sliding = (p: Parameters) => analyse(p, { ...startingPoint(p), friction: 'sliding' });
const loopGain = ({ frequency, openLoop }: ReturnType<typeof analyse>) => ({
  frequency,
  magnitude: openLoop.magnitude,
});
const scene = (name: string) => sceneById(name).parameters;

describe('the gain of the controller', () => {
  // The analysis has its own code for it, which is held against the simulation elsewhere.
  it.each([
    ['as it is', {}],
    ['without integral gain', { Ki: 0 }],
    ['without a filter of the speed', { derivativeTime: 0 }],
    ['without damping gain', { Kd: 0 }],
    ['as a cascade', { controller: 'cascade' }],
    ['as a cascade without integral action', { controller: 'cascade', resetTime: 0 }],
  ] as const)('is that of the sampled one, %s', (_, changes) => {
    const p = { ...defaultParameters(), ...changes };
    const controller = new PositionController(p);
    for (const frequency of [0.3, 7, 90, 800, 3900]) {
      const { position, speed } = controller.feedback(unit(2 * Math.PI * frequency * controller.period));
      const sampled = magnitude(plus(position, speed));
      expect(controllerGain(p, p, frequency) / (sampled / controller.perForce)).toBeCloseTo(1, 9);
    }
  });
});

describe('moved gains', () => {
  // C(s) = Kp + Ki/s + Kd s/(T_f s + 1), with s replaced by s/r and multiplied by r²: multiplied out by hand.
  it('scale the controller along the frequency axis, and by r²', () => {
    const continuous = (gains: ReturnType<typeof movedGains>, w: number) => {
      const filter = 1 + (w * gains.derivativeTime) ** 2;
      return Math.hypot(
        gains.Kp + (gains.Kd * w * w * gains.derivativeTime) / filter,
        (gains.Kd * w) / filter - gains.Ki / w,
      );
    };
    const gains = { ...defaultParameters(), Kp: 2e6, Ki: 1e8, Kd: 8000, derivativeTime: 2e-4 };
    for (const r of [0.3, 1, 2.5]) {
      for (const w of [10, 300, 5000]) {
        expect(continuous(movedGains(gains, r), r * w) / (r ** 2 * continuous(gains, w))).toBeCloseTo(1, 12);
      }
    }
  });
});

describe('a dragged crossover', () => {
  it.each(['mould-shuttle', 'slow-scan-iron', 'four-motors-one-misaligned', 'screw-backlash'])(
    'lands where it was dragged to: %s',
    (name) => {
      const p = scene(name);
      const before = sliding(p);
      const from = present(before.figures.crossover);
      for (const target of [0.6 * from, 1.25 * from]) {
        const gains = present(gainsForCrossover(p, loopGain(before), target));
        const after = sliding({ ...p, ...gains });
        // The grid of the analysis is closer than 3 %; between its points |L| is taken as a power of frequency.
        expect(present(after.figures.crossover) / target).toBeCloseTo(1, 2);
      }
    },
  );

  it('keeps the shape of a loop round a mass: its phase margin changes by no more than the delay takes', () => {
    const p = scene('mould-shuttle');
    const before = sliding(p);
    const [from] = before.figures.crossovers;
    const target = present(from) * 0.7;
    const after = sliding({ ...p, ...present(gainsForCrossover(p, loopGain(before), target)) });
    const change = present(after.figures.phaseMargin).value - present(before.figures.phaseMargin).value;
    // Hold and computing take two periods of 16 kHz and half of 8 kHz at most; the current loop of 1 kHz is a lag of 1/(2π·1000) s.
    const delay =
      2 / p.currentRate + p.positionDivider / p.currentRate / 2 + 1 / (2 * Math.PI * p.currentBandwidth);
    expect(change).toBeGreaterThan(0);
    expect(change).toBeLessThan(2 * Math.PI * (present(from) - target) * delay * 1.3);
  });

  it('does not go where no gains lead', () => {
    const p = scene('mould-shuttle');
    expect(gainsForCrossover({ ...p, Kp: 0, Ki: 0, Kd: 0 }, loopGain(sliding(p)), 50)).toBeNull();
  });
});

describe('the main crossover', () => {
  it.each(DRIVE_TYPES)('is where the start gains of a preset were made for: %s', (id) => {
    const known: Record<string, string> = {
      tubular: 'mould-shuttle',
      'u-channel': 'soft-coil-mounting',
      flat: 'slow-scan-iron',
      screw: 'screw-backlash',
    };
    const p = scene(present(known[id]));
    const main = present(sliding(p).figures.crossover);
    expect(main / ((2.5 * p.Kp) / p.Kd / (2 * Math.PI))).toBeGreaterThan(0.5);
    expect(main / ((2.5 * p.Kp) / p.Kd / (2 * Math.PI))).toBeLessThan(2);
  });

  it('is not that of a resonance which reaches above 1', () => {
    const p = { ...scene('soft-coil-mounting'), filter1: 'off' as const };
    const { crossovers, crossover } = sliding(p).figures;
    expect(crossovers.length).toBeGreaterThan(1);
    expect(crossover).toBe(crossovers[0]);
  });

  it('is none when the loop never has a gain of 1', () => {
    expect(sliding({ ...scene('mould-shuttle'), Kp: 1, Ki: 0, Kd: 1 }).figures.crossover).toBeNull();
  });
});

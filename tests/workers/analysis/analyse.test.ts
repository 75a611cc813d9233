import { describe, expect, it } from 'vitest';
import { GRAVITY } from '../../../shared/axis/gravity.ts';
import { startGains } from '../../../shared/axis/loop/startGains.ts';
import { motorConstants } from '../../../shared/axis/motor.ts';
import { at, present } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import { crossChecks } from '../../../shared/core/crossChecks.ts';
import {
  defaultParameters,
  PARAMETER_NAMES,
  type ParameterChanges,
  type Parameters,
  parameterRow,
} from '../../../shared/core/parameters/table.ts';
import { seeded } from '../../../shared/core/seeded.ts';
import { type OperatingPoint, startingPoint } from '../../../shared/protocol/analysis.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { demodulate } from '../../../workers/identify/demodulate.ts';
import { magnitude, over, phase } from '../../../workers/math/complex.ts';
import { root } from '../../../workers/math/root.ts';
import { bareScene } from '../model/sceneOf.ts';
import { barePreset, bareStanding, PRESET_NAMES, quietPreset, runAxis } from './barePreset.ts';

const bare = (changes: ParameterChanges = {}) => bareScene(changes).parameters;

describe('the result', () => {
  const p = barePreset('tubular');
  const result = analyse(p, bareStanding(p));
  const { frequency, openLoop, sensitivity, closedLoop, nyquistRe, nyquistIm } = result;

  it('ends at half the rate of the position loop and never turns back', () => {
    expect(frequency.at(-1)).toBeCloseTo(p.currentRate / p.positionDivider / 2, 9);
    for (let k = 1; k < frequency.length; k++) expect(at(frequency, k)).toBeGreaterThan(at(frequency, k - 1));
  });

  it('has S + T = 1 at every frequency', () => {
    frequency.forEach((_, k) => {
      const part = (wave: (x: number) => number) =>
        at(sensitivity.magnitude, k) * wave(at(sensitivity.phase, k)) +
        at(closedLoop.magnitude, k) * wave(at(closedLoop.phase, k));
      expect(part(Math.cos)).toBeCloseTo(1, 9);
      expect(part(Math.sin)).toBeCloseTo(0, 9);
    });
  });

  it('has the same open loop in both its forms', () => {
    frequency.forEach((_, k) => {
      const m = at(openLoop.magnitude, k);
      expect(Math.cos(at(openLoop.phase, k))).toBeCloseTo(at(nyquistRe, k) / m, 9);
      expect(Math.sin(at(openLoop.phase, k))).toBeCloseTo(at(nyquistIm, k) / m, 9);
    });
  });

  it('has phases without jumps: a plot of them needs no repair', () => {
    for (const { phase: angles } of [openLoop, sensitivity, closedLoop, result.tracking, result.stiffness]) {
      for (let k = 1; k < angles.length; k++)
        expect(Math.abs(at(angles, k) - at(angles, k - 1))).toBeLessThan(Math.PI / 2);
    }
  });

  it('names the peaks of its curves', () => {
    const { figures } = result;
    expect(1 / figures.modulusMargin.value).toBeCloseTo(Math.max(...sensitivity.magnitude), 2);
    expect(figures.closedLoopPeak.value).toBeCloseTo(Math.max(...closedLoop.magnitude), 2);
    const min = Math.min(...result.stiffness.magnitude);
    expect(figures.minimumStiffness.value / min).toBeCloseTo(1, 3);
  });
});

describe('stiffness at standstill, by statics', () => {
  const proportional = { Ki: 0, Kp: 2e6, Kd: 7e3 };

  it('is Kp without integrator: e = F/Kp', () => {
    const p = bare(proportional);
    expect(analyse(p, bareStanding(p)).figures.staticStiffness / 2e6).toBeCloseTo(1, 6);
  });

  it('is Kp and the bristles side by side while the guide sticks', () => {
    const p = bare({ ...proportional, stictionCoefficient: 0.006, frictionCoefficient: 0.004 });
    const { staticStiffness } = analyse(p, startingPoint(p)).figures;
    expect(staticStiffness / (2e6 + p.bristleStiffness)).toBeCloseTo(1, 6);
  });

  it('is without bound with an integrator on the scale of the table', () => {
    const p = bare();
    expect(analyse(p, bareStanding(p)).figures.staticStiffness).toBe(Number.POSITIVE_INFINITY);
  });

  it('is that of screw, nut and bearings when the encoder sits on the motor, whatever the gains', () => {
    const p = barePreset('screw', { interpolation1: 0, interpolation2: 0, screwExpansion: 0 });
    const shaft = p.screwRigidity / (p.start + p.screwSpan);
    const series = 1 / (1 / p.linkStiffness + 1 / shaft);
    expect(analyse(p, bareStanding(p)).figures.staticStiffness / series).toBeCloseTo(1, 4);
  });
});

describe('what holds the operating point', () => {
  it('is weight over force constant on a vertical axis', () => {
    const p = bare({ inclination: Math.PI / 2 });
    const mass = p.coilMass + p.tableMass + p.payload;
    const { holdingCurrent, holdingVoltage } = analyse(p, bareStanding(p)).figures;
    const { forcePerAmp, resistance } = motorConstants(p);
    expect(holdingCurrent).toBeCloseTo((mass * GRAVITY) / forcePerAmp, 9);
    expect(holdingVoltage).toBeCloseTo(resistance * holdingCurrent, 9);
  });

  it('is the external load too, with its sign', () => {
    const p = bare();
    const { holdingCurrent } = analyse(p, { ...bareStanding(p), loadForce: -100 }).figures;
    expect(holdingCurrent).toBeCloseTo(100 / motorConstants(p).forcePerAmp, 9);
  });

  it('is back-EMF and drag at a speed', () => {
    const p = bare({ viscous: 40 });
    const { flux, forcePerAmp, polePitch, resistance, inductance } = motorConstants(p);
    const speed = 0.5;
    const { holdingCurrent, holdingVoltage } = analyse(p, { ...bareStanding(p), speed }).figures;
    const i = (40 * speed) / forcePerAmp;
    const omega = (Math.PI / polePitch) * speed;
    expect(holdingCurrent).toBeCloseTo(i, 9);
    expect(holdingVoltage).toBeCloseTo(Math.hypot(omega * inductance * i, resistance * i + omega * flux), 9);
  });

  it('rises as the magnets weaken with the temperature of the carrier', () => {
    const p = bare({ magnetTempCoefficient: -0.0011, magnetFollow: 0.35, ambient: 20 });
    const point = { ...bareStanding(p), loadForce: 100 };
    const warm = analyse(p, { ...point, carrierTemperature: 70 }).figures.holdingCurrent;
    expect(warm / analyse(p, point).figures.holdingCurrent).toBeCloseTo(1 / (1 - 0.0011 * 0.35 * 50), 9);
  });
});

describe('stability', () => {
  it('is not claimed for an axis that stays wherever it is put', () => {
    for (const Kd of [0, 7000]) {
      const p = bare({ Kp: 0, Ki: 0, Kd });
      expect(analyse(p, bareStanding(p)).figures.stable).toBe(false);
    }
  });

  it.each(PRESET_NAMES.filter((name) => name !== 'screw'))(
    '%s: with an integrator it is conditional, and lost at the gain that the figures name',
    (name) => {
      const p = barePreset(name);
      const { conditional, gainReduction } = analyse(p, bareStanding(p)).figures;
      expect(conditional).toBe(true);
      const excess = (factor: number) => {
        const scaled = { ...p, Kp: p.Kp * factor, Ki: p.Ki * factor, Kd: p.Kd * factor };
        const { re, im } = new SampledLoop(scaled, bareStanding(p)).eigenvalues;
        return Math.max(...re.map((value, k) => Math.hypot(value, at(im, k)))) - 1;
      };
      const critical = root(excess, present(gainReduction).value * 0.9, present(gainReduction).value * 1.1);
      expect(Math.abs(critical / present(gainReduction).value - 1)).toBeLessThan(1e-6);
    },
  );

  // Eight currents, two of them controlled as sums. Of the six that are left, that of a motor out of line is driven by its back-EMF in one
  // direction; the others see neither controller nor motion.
  it.each([
    [0, 6],
    [0.001, 5],
  ])('is judged for four like motors, one of them %d m out of line', (misalignment3, count) => {
    const p = { ...barePreset('tubular'), motorCount: 4, misalignment3 };
    const tuned = { ...p, ...startGains(p, 80) };
    const { figures, eigenvaluesRe } = analyse(tuned, bareStanding(tuned));
    expect(figures.stable).toBe(true);
    const alike = eigenvaluesRe.filter((value) => Math.abs(value - circulation(tuned)) < 1e-9);
    expect(alike).toHaveLength(count);
  });

  /** exp(−R Tp/L) */
  function circulation(p: Parameters): number {
    const { resistance, inductance } = motorConstants(p);
    const hot = resistance * (1 + 0.00393 * (p.windingStart - 20));
    return Math.exp((-hot * p.positionDivider) / p.currentRate / inductance);
  }
});

/*
 * Sliding with bristles, against the simulation: the table scans at a constant speed and a small force shakes it. At 0.2 mm/s the bristles
 * lag by a millisecond, at 20 mm/s they do not.
 */
describe('a sliding guide', () => {
  it.each([2e-4, 2e-2])('gives way at %d m/s as the analysis says', (speed) => {
    const frequency = 40;
    const p = quietPreset('tubular', {
      program: 'scan',
      scanSpeed: speed,
      stroke: 2 * speed,
      acceleration: 1,
      process: 'sine',
      processForce: 0.02,
      processFrequency: frequency,
      interpolation1: 0,
      interpolation2: 0,
      ripple6: 0,
      ripple12: 0,
    });
    const [phases, moved, pushed]: [number[], number[], number[]] = [[], [], []];
    runAxis(p, Math.round((1.2 * p.currentRate) / p.positionDivider), (record, time) => {
      if (time < 0.7) return;
      phases.push(2 * Math.PI * frequency * time);
      moved.push(at(record, C.tablePosition) - at(record, C.setpoint));
      pushed.push(at(record, C.processForce));
    });
    const measured = over(demodulate(phases, moved), demodulate(phases, pushed));
    const point: OperatingPoint = { ...startingPoint(p), speed, friction: 'sliding' };
    const off = over(measured, new SampledLoop(p, point).compliance(2 * Math.PI * frequency));
    expect(Math.abs(20 * Math.log10(magnitude(off)))).toBeLessThan(0.5);
    expect(Math.abs((phase(off) * 180) / Math.PI)).toBeLessThan(3);
  });
});

describe('an operating point that cannot be', () => {
  const p = bare({ saturationCurrent: 10 });
  const point = bareStanding(p);
  it.each([
    ['position', { position: 0.5 }, /position is 500 mm; allowed is the travel, −300 mm to 300 mm/],
    ['speed', { speed: 9 }, /speed is 9 m\/s; allowed is up to the speed limit, 5 m\/s/],
    ['friction', { speed: 0.1, friction: 'presliding' }, /speed is 0.1 m\/s; .* allowed is 0/],
    ['load', { loadForce: 1e5 }, /The motor cannot hold this axis .* a loadForce of 100000 N/],
    [
      'temperature',
      { windingTemperature: Number.NaN },
      /windingTemperature is NaN; it must be a finite number/,
    ],
  ] as [string, Partial<OperatingPoint>, RegExp][])('is refused by its %s', (_name, change, message) => {
    expect(() => analyse(p, { ...point, ...change })).toThrow(message);
    expect(() => analyse(p, { ...point, ...change })).toThrow(RangeError);
  });
});

describe('any legal set of parameters', () => {
  const random = seeded(20);
  const set = (): Parameters => {
    const values: Record<string, unknown> = defaultParameters();
    for (const name of PARAMETER_NAMES) {
      const row = parameterRow(name);
      if (random() < 0.5 || name === 'program') continue;
      if (row.kind === 'switch') values[name] = random() < 0.5;
      else if (row.kind === 'choice') values[name] = row.options[Math.floor(random() * row.options.length)];
      else {
        const share = random();
        const value =
          row.scale === 'log'
            ? row.min * (row.max / row.min) ** share
            : row.min + (row.max - row.min) * share;
        values[name] = row.integer ? Math.round(value) : value;
      }
    }
    const p = { ...(values as Parameters), program: 'hold' } as Parameters;
    return random() < 0.7 ? { ...p, ...startGains(p, 5 * 40 ** random()) } : p;
  };

  it('gives finite curves and figures, or is refused in words', () => {
    let analysed = 0;
    for (let tried = 0; tried < 3000 && analysed < 24; tried++) {
      const p = set();
      if (crossChecks(p).length > 0) continue;
      for (const friction of ['presliding', 'sliding'] as const) {
        try {
          const { openLoop, sensitivity, closedLoop, tracking, stiffness, figures } = analyse(p, {
            ...startingPoint(p),
            friction,
          });
          for (const curve of [openLoop, sensitivity, closedLoop, tracking, stiffness]) {
            expect(curve.magnitude.every(Number.isFinite)).toBe(true);
            expect(curve.phase.every(Number.isFinite)).toBe(true);
          }
          expect(Number.isFinite(figures.modulusMargin.value)).toBe(true);
          expect(Number.isNaN(figures.staticStiffness)).toBe(false);
          analysed++;
        } catch (error) {
          expect(error).toBeInstanceOf(RangeError);
        }
      }
    }
    expect(analysed).toBeGreaterThanOrEqual(24);
  });
});

import { describe, expect, test } from 'vitest';
import { PRESETS } from '../../scenes/index.ts';
import { COPPER_ALPHA, motorConstants, windingToAmbientResistance } from '../../shared/axis/motor.ts';
import { parameterWarnings } from '../../shared/axis/warnings.ts';
import { at } from '../../shared/core/at.ts';
import { crossChecks } from '../../shared/core/crossChecks.ts';
import { defaultParameters, type Parameters } from '../../shared/core/parameters/table.ts';
import { presetParameters } from '../../shared/core/preset.ts';
import { DRIVE_TYPES } from '../../shared/core/scene.ts';

const drives = Object.entries(PRESETS).map(([id, preset]) => ({
  id,
  preset,
  p: { ...defaultParameters(), ...preset.parameters } as Parameters,
}));

/** The drives that the scenes use, one of each form. */
const demonstration = DRIVE_TYPES.map((driveType) => drives.find(({ id }) => id === driveType)!);

/** Temperatures of the thermal classes 105, E, B, F, H, °C: IEC 60085; used by IEC 60034-1. */
const CLASS_TEMPERATURES = [105, 120, 130, 155, 180];

/** Phase current that gives a force, A rms, and the copper loss that goes with it at 20 °C, W: P = 3 R I². */
function copperLoss(p: Parameters, force: number): number {
  const forcePerAmp = p.lead > 0 ? (p.torqueConstant * 2 * Math.PI) / p.lead : p.forceConstant;
  return 3 * (p.resistance / 2) * (force / forcePerAmp) ** 2;
}

/** Kelvin of winding over ambient for 1 W: nodal equations of winding, carrier and table by elimination. */
function rise(p: Parameters): number {
  const { windingToCarrier: wh, carrierToAir: ha, carrierToTable: ht, tableToAir: ta } = p;
  const a = [
    [wh, -wh, 0, 1],
    [-wh, wh + ha + ht, -ht, 0],
    [0, -ht, ht + ta, 0],
  ];
  for (let pivot = 2; pivot > 0; pivot--) {
    for (let row = 0; row < pivot; row++) {
      const share = at(at(a, row), pivot) / at(at(a, pivot), pivot);
      a[row] = at(a, row).map((value, column) => value - share * at(at(a, pivot), column));
    }
  }
  return at(at(a, 0), 3) / at(at(a, 0), 0);
}

test('there are sizes of four forms, each a legal set without warnings', () => {
  for (const driveType of DRIVE_TYPES) {
    const sizes = drives.filter(({ preset }) => preset.driveType === driveType);
    expect(sizes.length).toBeGreaterThanOrEqual(3);
    expect(at(sizes, 0).id).toBe(driveType);
  }
  for (const { p } of drives) {
    expect(crossChecks(p)).toEqual([]);
    // The default job is faster than a screw; how fast a drive can go is the scene's affair.
    expect(parameterWarnings({ ...p, program: 'hold' })).toEqual([]);
  }
});

test('every drive sets the same parameters, so that none leaves remains of another', () => {
  const names = Object.keys(PRESETS.tubular!.parameters);
  for (const { preset } of drives) expect(Object.keys(preset.parameters)).toEqual(names);
});

describe.each(drives)('$id', ({ p, preset }) => {
  // The motor constant is force per square root of copper loss.
  test('motor constant, force constant and resistance belong together', () => {
    const { motorConstant } = motorConstants(p);
    expect(100 / Math.sqrt(copperLoss(p, 100))).toBeCloseTo(motorConstant, 9);
  });

  test('the continuous force heats the winding to its limit at standstill', () => {
    const hot = 1 + COPPER_ALPHA * (p.windingLimit - 20);
    const reached = p.ambient + rise(p) * hot * copperLoss(p, p.continuousForce);
    expect(windingToAmbientResistance(p)).toBeCloseTo(rise(p), 9);
    // 3 % of the force is 6 % of the loss.
    expect(Math.abs((reached - p.ambient) / (p.windingLimit - p.ambient) - 1)).toBeLessThan(0.06);
  });

  test('the winding limit is that of a thermal class, the same for all', () => {
    expect(CLASS_TEMPERATURES).toContain(p.windingLimit);
    expect(p.windingLimit).toBe(PRESETS.tubular!.parameters.windingLimit);
  });

  // Rewound with k times the turns of 1/k the copper section: K_f ~ k, R ~ k², L ~ k² (flux linkage and ampere turns).
  test('rewinding changes neither motor constant nor electrical time constant', () => {
    for (const k of [0.25, 0.5, 2, 3]) {
      const rewound: Parameters = {
        ...p,
        forceConstant: p.forceConstant * k,
        torqueConstant: p.torqueConstant * k,
        resistance: p.resistance * k * k,
        inductance: p.inductance * k * k,
      };
      const [one, other] = [motorConstants(p), motorConstants(rewound)];
      expect(other.motorConstant / one.motorConstant).toBeCloseTo(1, 12);
      expect(other.inductance / other.resistance / (one.inductance / one.resistance)).toBeCloseTo(1, 12);
      expect(other.forcePerAmpRms / one.forcePerAmpRms).toBeCloseTo(k, 12);
    }
  });

  // Power balance of a sinusoidal three-phase machine, e.g. Krishnan, Permanent Magnet Synchronous and Brushless DC Motor
  // Drives, 2010, ch. 3: K_f,pk/K_e,phase,pk = 3/2, K_f,rms/K_e,LL,rms = √3.
  test('force constant and back-EMF are two faces of one flux', () => {
    const m = motorConstants(p);
    const phasePeak = (Math.PI / m.polePitch) * m.flux;
    expect(m.forcePerAmp / phasePeak).toBeCloseTo(1.5, 9);
    expect(m.forcePerAmpRms / m.backEmf).toBeCloseTo(1.7320508076, 9);
    expect((phasePeak * Math.sqrt(3)) / Math.SQRT2).toBeCloseTo(m.backEmf, 9);
  });

  // Common practice, no source: ironless motors 4 to 5 times, iron-core motors 2 to 3, servomotors about 3.
  test('the peak current gives as much more force as is usual for its form, saturation counted', () => {
    const saturated =
      p.saturationCurrent > 0 ? 1 / Math.sqrt(1 + (p.peakCurrent / p.saturationCurrent) ** 2) : 1;
    const peak = motorConstants(p).forcePerAmp * p.peakCurrent * saturated;
    const [min, max] = p.fieldLaw === 'bessel' || p.fieldLaw === 'cosh' ? [4, 5] : [2, 3.05];
    expect(peak / p.continuousForce).toBeGreaterThan(min);
    expect(peak / p.continuousForce).toBeLessThan(max);
  });

  test('the amplifier carries the continuous force for ever', () => {
    expect(p.continuousCurrent * motorConstants(p).forcePerAmp).toBeGreaterThan(p.continuousForce);
    expect(p.busVoltage).toBe(325);
  });

  test('the winding warms in tens of seconds to minutes, the carrier more slowly', () => {
    const winding = p.windingCapacity / p.windingToCarrier;
    expect(winding).toBeGreaterThan(20);
    expect(winding).toBeLessThan(300);
    expect(p.carrierCapacity / (p.carrierToAir + p.carrierToTable)).toBeGreaterThan(3 * winding);
  });

  test('N motors carry N times as much, and no hotter', () => {
    const four = {
      ...defaultParameters(),
      ...presetParameters(preset, 4),
      motorCount: 4,
      tableToAir: 4 * p.tableToAir,
    };
    expect(four.peakCurrent).toBe(4 * p.peakCurrent);
    expect(4 * windingToAmbientResistance(four)).toBeCloseTo(windingToAmbientResistance(p), 9);
  });
});

test('a title says what tells the sizes of a form apart', () => {
  expect(new Set(drives.map(({ preset }) => preset.title)).size).toBe(drives.length);
  for (const { id, preset, p } of drives) {
    if (id !== preset.driveType) expect(preset.title).toContain(` ${p.continuousForce} N`);
  }
});

// Force per volume and loss per volume are the same in motors that are loaded alike, so K_m = F/√P rises with the square root of the
// volume, and the mass with the volume (dimensional analysis); a third either way is left to ends and connections.
describe.each(['tubular', 'u-channel', 'flat'] as const)('the sizes of %s', (driveType) => {
  const sizes = drives.filter(({ preset }) => preset.driveType === driveType);

  test('weigh and shed heat in proportion to their force', () => {
    const [one] = sizes;
    for (const { p } of sizes) {
      const force = p.continuousForce / one!.p.continuousForce;
      expect(p.coilMass / one!.p.coilMass / force).toBeGreaterThan(0.75);
      expect(p.coilMass / one!.p.coilMass / force).toBeLessThan(1.33);
      const constants = motorConstants(p).motorConstant / motorConstants(one!.p).motorConstant;
      expect(constants / Math.sqrt(force)).toBeGreaterThan(0.75);
      expect(constants / Math.sqrt(force)).toBeLessThan(1.33);
    }
  });
});

test('the drives of the scenes are of one class: equal continuous force within 5 %', () => {
  for (const { p } of demonstration) expect(Math.abs(p.continuousForce / 300 - 1)).toBeLessThan(0.05);
});

// Common practice, no source: what a practitioner expects of drives of this size.
describe('the usual ranges', () => {
  type Range = readonly [least: number, most: number];
  const linear = (
    constant: Range,
    ohm: Range,
    henry: Range,
    pitch: Range,
    force: Range,
    stiffness: Range,
  ) => ({
    forceConstant: constant,
    resistance: ohm,
    inductance: henry,
    polePitch: pitch,
    continuousForce: force,
    linkStiffness: stiffness,
  });
  type Ranges = Partial<Record<keyof Parameters, Range>>;
  /** Motors of half a newton metre have thinner wire for the same voltage. */
  const SMALL_MOTORS = ['screw-160', 'screw-640-fine'];
  const smallMotor: Ranges = { resistance: [4, 12] };
  const usual: Record<string, Ranges> = {
    tubular: linear([30, 80], [3, 10], [3e-3, 10e-3], [0.015, 0.045], [100, 400], [80e6, 300e6]),
    'u-channel': linear([25, 65], [3, 8], [0.8e-3, 2.5e-3], [0.015, 0.03], [80, 300], [10e6, 40e6]),
    flat: linear([50, 120], [1.5, 6], [10e-3, 50e-3], [0.016, 0.03], [300, 1500], [100e6, 400e6]),
    screw: {
      torqueConstant: [0.4, 1.2],
      resistance: [1, 4],
      inductance: [5e-3, 15e-3],
      lead: [0.005, 0.02],
      polePairs: [4, 5],
      backlash: [0, 5e-6],
    },
  };

  test.each(drives)('$id', ({ id, preset, p }) => {
    const ranges = { ...usual[preset.driveType], ...(SMALL_MOTORS.includes(id) && smallMotor) };
    for (const [name, [min, max]] of Object.entries(ranges)) {
      expect(p[name as keyof Parameters], name).toBeGreaterThanOrEqual(min);
      expect(p[name as keyof Parameters], name).toBeLessThanOrEqual(max);
    }
    expect(p.encoderResolution).toBeLessThanOrEqual(1e-7);
    expect(p.encoderResolution).toBeGreaterThanOrEqual(1e-9);
  });

  test('cogging, ripple and attraction tell iron from ironless', () => {
    for (const { preset, p } of drives) {
      const cogging = (p.cogging1 + p.cogging2 + p.cogging3) / p.continuousForce;
      const ripple = p.ripple6 + p.ripple12;
      if (preset.driveType === 'flat') {
        expect(cogging).toBeGreaterThanOrEqual(0.02);
        expect(cogging).toBeLessThanOrEqual(0.08);
        expect(ripple).toBeGreaterThanOrEqual(0.02);
        expect(ripple).toBeLessThanOrEqual(0.04);
        expect(p.attraction / p.continuousForce).toBeGreaterThanOrEqual(4);
        expect(p.attraction / p.continuousForce).toBeLessThanOrEqual(8);
        // End effect once and half a time per pole pitch.
        expect([p.cogging2Period, p.cogging3Period]).toEqual([p.polePitch, 2 * p.polePitch]);
      } else {
        expect(cogging).toBeLessThanOrEqual(preset.driveType === 'screw' ? 0.0101 : 0);
        expect(ripple).toBeLessThanOrEqual(preset.driveType === 'screw' ? 0.02 : 0.0101);
        expect([p.attraction, p.saturationCurrent, p.eddyDrag, p.hysteresisDrag]).toEqual([0, 0, 0, 0]);
      }
    }
  });

  test.each(drives.filter(({ preset }) => preset.driveType === 'screw'))(
    '$id: 0.5 to 5 N·m continuous, housing 0.3 to 0.8 K/W, whole train 60 to 200 N/µm',
    ({ p }) => {
      const torque = (p.continuousForce * p.lead) / (2 * Math.PI);
      expect(torque).toBeGreaterThanOrEqual(0.5);
      expect(torque).toBeLessThanOrEqual(5);
      const housing = windingToAmbientResistance(p) - 1 / p.windingToCarrier;
      expect(housing).toBeGreaterThanOrEqual(0.3);
      expect(housing).toBeLessThanOrEqual(0.8);
      const train = 1 / (1 / p.linkStiffness + p.screwSpan / p.screwRigidity);
      expect(train).toBeGreaterThanOrEqual(60e6);
      expect(train).toBeLessThanOrEqual(200e6);
    },
  );

  test('an exposed coil sheds its heat best', () => {
    const [tubular, uChannel, flat] = demonstration.map(({ p }) => windingToAmbientResistance(p));
    expect(tubular).toBeLessThan(flat!);
    expect(tubular).toBeLessThan(uChannel!);
  });

  test('crossover: tens of hertz with a screw, 40 to 150 Hz with a linear motor', () => {
    for (const { preset } of drives) {
      expect(preset.crossover).toBeGreaterThanOrEqual(preset.driveType === 'screw' ? 20 : 40);
      expect(preset.crossover).toBeLessThanOrEqual(preset.driveType === 'screw' ? 40 : 150);
    }
  });
});

// IEC 60028: resistance of annealed copper is proportional to 234.5 °C + T.
test('the temperature coefficient of copper', () => {
  expect(Math.abs(COPPER_ALPHA - 1 / (234.5 + 20))).toBeLessThan(2e-6);
});

import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../../scenes/index.ts';
import { chipBed, fateOf, metBy } from '../../../../shared/axis/chips/chipBed.ts';
import { chipVolume, chipWeight, heldChip } from '../../../../shared/axis/chips/chipForce.ts';
import { openMagnets } from '../../../../shared/axis/flux/motorFlux.ts';
import { flatSize } from '../../../../shared/axis/motorSize.ts';
import { present } from '../../../../shared/core/at.ts';
import { defaultParameters, type ParameterChanges } from '../../../../shared/core/parameters/table.ts';

const MU0 = 4e-7 * Math.PI;
const machine = (preset: string, changes: ParameterChanges = {}) => ({
  ...defaultParameters(),
  ...present(PRESETS[preset]).parameters,
  chipCount: 60,
  ...changes,
});
const magnetsOf = (preset: string) => present(openMagnets(machine(preset)));

describe('the force on a chip', () => {
  // Far from an open row only the fundamental is left, b exp(−ky) in either direction, so B² = b² exp(−2ky) everywhere (the field of
  // open-gradient magnetic separators, from memory): F = V 3/(2μ0) 2k b² exp(−2ky).
  it('is that of a soft sphere in the exponential field of an open row, as long as it is not saturated', () => {
    const p = machine('flat');
    const { magnet } = flatSize(p);
    const [k, d] = [Math.PI / p.polePitch, 2 * p.polePitch];
    const [sinh, cosh] = [Math.sinh(k * magnet.height), Math.cosh(k * magnet.height)];
    const remanence = ((4 * 1.25) / Math.PI) * Math.sin((Math.PI * magnet.length) / p.polePitch / 2);
    const b = (remanence * sinh) / (sinh + p.recoilPermeability * cosh);
    const closed = ((chipVolume(d) * 3) / (2 * MU0)) * 2 * k * b ** 2 * Math.exp(-k * d);
    expect(heldChip(magnetsOf('flat'), d).force / closed).toBeCloseTo(1, 2);
  });

  it('grows no faster than that of a saturated sphere: V M_s ∂B/∂y', () => {
    const near = magnetsOf('flat');
    const twice = { ...near, field: (n: number, s: number) => scaled(near.field(n, s), 10) };
    const four = { ...near, field: (n: number, s: number) => scaled(near.field(n, s), 20) };
    expect(heldChip(four, 1e-3).force / heldChip(twice, 1e-3).force).toBeCloseTo(2, 6);
  });

  it('holds a chip of a millimetre on each form of open magnets with many times its weight', () => {
    for (const preset of ['flat', 'tubular', 'u-channel'])
      expect(heldChip(magnetsOf(preset), 1e-3).force, preset).toBeGreaterThan(50 * chipWeight(1e-3));
  });

  it('holds it at the joints of a shaft, where like poles face', () => {
    const { polePitch } = magnetsOf('tubular');
    expect(heldChip(magnetsOf('tubular'), 1e-3).place / polePitch).toBeLessThan(0.15);
  });
});

const scaled = (harmonic: { across: number; along: number; potential: number }, by: number) => ({
  across: by * harmonic.across,
  along: by * harmonic.along,
  potential: by * harmonic.potential,
});

describe('what becomes of a chip', () => {
  // Nip with r = 0.6 mm, g = ρ = 1 mm: cos θ = 1.4/1.6, θ = 29.0°, less than 2 atan 0.3 = 33.4°; with r = 0.7 mm θ = 40.1°.
  it('follows from its size and the clearance: beneath, into the gap, or ahead', () => {
    expect([0.9e-3, 1.2e-3, 1.4e-3].map((d) => fateOf(d, 1e-3))).toEqual(['passes', 'jams', 'pushed']);
  });

  it('is decided by the end of the unit that meets it first, and not where it fell on the unit', () => {
    expect(metBy(0.05, 0.2, 0, 0, 0)).toBeNaN();
    expect(metBy(0.15, 0.2, 0, -0.1, 0.02)).toBe(0);
    expect(metBy(0.15, 0.2, 0, -0.1, 0.06)).toBe(1);
    expect(metBy(-0.15, 0.2, 0, -0.1, 0)).toBe(-1);
  });

  it('needs open magnets: a cover keeps all away, and a screw has none', () => {
    expect(chipBed(machine('flat'))?.chips).toHaveLength(60);
    expect(chipBed(machine('flat', { cover: true }))).toBeNull();
    expect(chipBed(machine('screw'))).toBeNull();
    expect(chipBed(machine('flat', { chipCount: 0 }))).toBeNull();
  });
});

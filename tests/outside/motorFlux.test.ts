import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../scenes/index.ts';
import { fitFactor, ironFactor } from '../../shared/axis/field.ts';
import { besselI0, besselI1, besselK0, besselK1 } from '../../shared/axis/flux/bessel.ts';
import { fluxDensity, type HarmonicsAt, ORDERS } from '../../shared/axis/flux/harmonics.ts';
import { rowField } from '../../shared/axis/flux/magnetRow.ts';
import { shaftField } from '../../shared/axis/flux/magnetShaft.ts';
import { type MotorFlux, motorFlux } from '../../shared/axis/flux/motorFlux.ts';
import { channelSize, tubularSize } from '../../shared/axis/motorSize.ts';
import { present } from '../../shared/core/at.ts';
import { defaultParameters, type ParameterChanges } from '../../shared/core/parameters/table.ts';

const MU0 = 4e-7 * Math.PI;
const FORMS = ['flat', 'u-channel', 'tubular'] as const;
const kit = (form: (typeof FORMS)[number], changes: ParameterChanges = {}) => ({
  ...defaultParameters(),
  ...present(PRESETS[form]).parameters,
  ...changes,
});
const fluxOf = (form: (typeof FORMS)[number], changes: ParameterChanges = {}) =>
  motorFlux(form, kit(form, changes)) as MotorFlux;

/** ∫ f over a stretch, midpoint rule. */
function integral(from: number, to: number, f: (x: number) => number, steps = 4000): number {
  const h = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += f(from + (i + 0.5) * h);
  return sum * h;
}

const potential = (field: HarmonicsAt, tau: number, x: number, y: number) =>
  ORDERS.reduce((sum, n) => sum + field(n, y).potential * Math.sin((n * Math.PI * x) / tau), 0);

describe('modified Bessel functions', () => {
  // Abramowitz & Stegun, Handbook of Mathematical Functions, table 9.8, from memory.
  it.each([
    [1, 0.565159104, 0.4210244382, 0.6019072302],
    [2, 1.5906368546, 0.1138938727, 0.1398658818],
  ])('of %d are the tabulated ones', (u, i1, k0, k1) => {
    expect(Math.abs(besselI1(u) - i1)).toBeLessThan(1e-9);
    expect(Math.abs(besselK0(u) - k0)).toBeLessThan(1e-9);
    expect(Math.abs(besselK1(u) - k1)).toBeLessThan(1e-9);
  });

  // The same, 9.6.15.
  it.each([0.2, 1.3, 6, 21])('of %d satisfy I0 K1 + I1 K0 = 1/u', (u) => {
    const sum = besselI0(u) * besselK1(u) + besselI1(u) * besselK0(u);
    expect(Math.abs(sum * u - 1)).toBeLessThan(1e-13);
  });
});

describe('a row of magnets on back iron', () => {
  const row = { polePitch: 0.024, remanence: 1.25, permeability: 1, height: 5e-3, share: 0.8 };

  // Magnetic charge ±B_r on the faces and its image in the iron; a charged strip gives the angle under which it is seen, /2π.
  it.each([
    [0, 8e-3],
    [5e-3, 8e-3],
    [10e-3, 9e-3],
  ])('open to air at %d m, %d m: charged strips and their images', (x, y) => {
    const { height, polePitch, share, remanence } = row;
    const half = (share * polePitch) / 2;
    const strip = (at: number, below: number) =>
      (Math.atan((x - at + half) / below) - Math.atan((x - at - half) / below)) / (2 * Math.PI);
    let closed = 0;
    for (let j = -400; j <= 400; j++)
      closed +=
        (j % 2 === 0 ? remanence : -remanence) *
        (strip(j * polePitch, y - height) - strip(j * polePitch, y + height));
    const { across } = fluxDensity(rowField({ ...row, gap: Infinity }), polePitch, x, y);
    expect(Math.abs(across - closed)).toBeLessThan(3e-4);
  });

  // Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed. 2003, ch. 1: B_r h/(h + μ_r g), here of poles 2 m wide.
  it('facing iron, in the limit of wide poles, is the load line', () => {
    const wide = { ...row, polePitch: 2, permeability: 1.05, gap: 2e-3 };
    const { across } = rowField(wide)(1, row.height + 1e-3);
    const load = ((4 / Math.PI) * Math.sin(0.4 * Math.PI) * 1.25 * 5e-3) / (5e-3 + 1.05 * 2e-3);
    expect(Math.abs(across / load - 1)).toBeLessThan(1e-4);
  });

  it('meets both irons at right angles', () => {
    const facing = rowField({ ...row, permeability: 1.05, gap: 1e-3 });
    for (const n of ORDERS) {
      expect(Math.abs(facing(n, 0).along)).toBe(0);
      expect(Math.abs(facing(n, 6e-3).along)).toBeLessThan(1e-15);
    }
  });
});

describe('a shaft of magnets with like poles facing', () => {
  // One cylinder magnetised along its axis: B = (B_r/2)[a/√(R² + a²) − b/√(R² + b²)] with the distances a, b of its ends from a point
  // of its axis (a loop of current integrated over its length; e.g. Furlani, Permanent Magnet and Electromechanical Devices, 2001).
  it.each([0, 4e-3, 11e-3, 15e-3])('at %d m on its axis is the sum of its cylinders', (x) => {
    const [polePitch, radius, share, remanence] = [0.03, 0.0126, 0.8, 1.25];
    const end = (d: number) => d / Math.hypot(radius, d);
    let closed = 0;
    for (let j = -300; j <= 300; j++) {
      const middle = (j + 0.5) * polePitch;
      const towards = j % 2 === 0 ? -1 : 1;
      const half = (share * polePitch) / 2;
      closed += (towards * remanence * (end(x - middle + half) - end(x - middle - half))) / 2;
    }
    const { along } = fluxDensity(shaftField({ polePitch, radius, share, remanence }), polePitch, x, 0);
    expect(Math.abs(along - closed)).toBeLessThan(1e-5);
  });
});

describe.each(FORMS)('the field in the %s motor', (form) => {
  const { magnets, polePitch, winding } = fluxOf(form);
  const round = form === 'tubular';

  it('sends as much flux into a closed surface as out of it, magnet face included', () => {
    const [low, high, left, right] = [0.3 * winding.middle - 1e-3, winding.middle + 2e-4, 2e-3, 17e-3];
    const weight = (y: number) => (round ? 2 * Math.PI * y : 1);
    const floor = round ? Math.max(low, 0) : low;
    const level = (y: number) =>
      weight(y) * integral(left, right, (x) => fluxDensity(magnets, polePitch, x, y).across);
    const side = (x: number) =>
      integral(floor, high, (y) => weight(y) * fluxDensity(magnets, polePitch, x, y).along);
    const scale = weight(high) * integral(left, right, () => 1) * 0.5;
    expect(Math.abs(level(high) - level(floor) + side(right) - side(left)) / scale).toBeLessThan(2e-4);
  });

  it('has flux lines whose potential is the flux between them', () => {
    const y = winding.middle;
    const [a, b] = [1e-3, 7e-3];
    const passed = integral(a, b, (x) => (round ? y : 1) * fluxDensity(magnets, polePitch, x, y).across);
    const between = potential(magnets, polePitch, a, y) - potential(magnets, polePitch, b, y);
    expect(Math.abs(passed / between - 1)).toBeLessThan(1e-6);
  });

  it('pulls a coil by the same force as the change of its linked flux', () => {
    // One turn of 1 A and 1 m: two sides half a pole pitch from its middle, or one ring.
    const y = winding.middle;
    const tau = polePitch;
    const b = (x: number) => fluxDensity(magnets, tau, x, y).across;
    const linked = (x: number) =>
      round
        ? 2 * Math.PI * potential(magnets, tau, x, y)
        : potential(magnets, tau, x - tau / 2, y) - potential(magnets, tau, x + tau / 2, y);
    for (const x of [1e-3, 6e-3, 19e-3]) {
      const lorentz = round ? -2 * Math.PI * y * b(x) : b(x + tau / 2) - b(x - tau / 2);
      const step = 1e-6;
      const byEnergy = (linked(x + step) - linked(x - step)) / (2 * step);
      expect(Math.abs(lorentz - byEnergy)).toBeLessThan(1e-6 * Math.abs(lorentz) + 1e-9);
    }
  });

  it('has the stress of Maxwell that its sheet of current asks for', () => {
    // Shear B_x B_y/μ0 on a surface between magnets and sheet, against the Lorentz force of the sheet; per metre over two pole pitches.
    const { fundamental, sheetPotential } = fluxOf(form);
    const k = Math.PI / polePitch;
    const sheet = 2e5;
    const y = form === 'u-channel' ? winding.from - 2e-4 : winding.middle - 3e-4;
    const reach = round ? y : 1;
    const step = 1e-7;
    const slope = (sheetPotential(y + step) - sheetPotential(y - step)) / (2 * step);
    const along = (x: number) =>
      fluxDensity(magnets, polePitch, x, y).along - (sheet * slope * Math.cos(k * x)) / reach;
    const across = (x: number) =>
      fluxDensity(magnets, polePitch, x, y).across -
      (k * sheet * sheetPotential(y) * Math.sin(k * x)) / reach;
    const shear = (reach * integral(0, 2 * polePitch, (x) => along(x) * across(x))) / MU0;
    const other = form === 'u-channel' ? -shear : 0; // The rear row pulls alike: the stress on the other side of the blade has the other sign.
    const lorentz = (round ? winding.middle : 1) * sheet * fundamental * polePitch;
    expect(Math.abs(Math.abs(shear - other) / lorentz - 1)).toBeLessThan(1e-4);
  });
});

describe('gap and eccentricity', () => {
  it.each(FORMS)('leave the %s motor as its datasheet has it at the nominal gap', (form) => {
    const p = kit(form);
    expect(fitFactor(p, p.polePitch)).toBe(1);
    expect(ironFactor(p)).toBe(1);
  });

  it.each(FORMS)('a wider gap weakens the %s motor at every step from 0.5 to 2.5 mm', (form) => {
    const fits = [0.5e-3, 1e-3, 1.5e-3, 2e-3, 2.5e-3].map((airGap) => {
      const p = kit(form, { airGap });
      return fitFactor(p, p.polePitch);
    });
    for (let i = 1; i < fits.length; i++) expect(fits[i]).toBeLessThan(fits[i - 1] as number);
  });

  it('flat: the load line takes 21 % of the flux from 1 to 2.5 mm, the two-dimensional field 25 %', () => {
    const p = kit('flat', { airGap: 2.5e-3 });
    const field = fluxOf('flat', { airGap: 2.5e-3 }).linkage / fluxOf('flat').linkage;
    expect((100 * (1 - fitFactor(p, p.polePitch))).toFixed(0)).toBe('21');
    expect((100 * (1 - field)).toFixed(0)).toBe('25');
  });

  it('flat: an inclined gap is the mean of the load lines over its width', () => {
    const e = 0.4e-3;
    const p = kit('flat', { coilOffset: e });
    const at = (s: number) => {
      const local = { ...p, airGap: p.airGap + s * e, coilOffset: 0 };
      return fitFactor(local, p.polePitch);
    };
    expect(Math.abs(fitFactor(p, p.polePitch) / (integral(-1, 1, at) / 2) - 1)).toBeLessThan(1e-7);
    const squares = integral(-1, 1, (s) => at(s) ** 2) / 2;
    expect(Math.abs(ironFactor(p) / squares - 1)).toBeLessThan(1e-7);
  });

  it('U-channel: the mean over a blade off centre, in a channel opened to its gap', () => {
    const p = kit('u-channel', { airGap: 2e-3, coilOffset: 1e-3 });
    const { bladeWidth } = channelSize(p);
    const mean = (flux: MotorFlux, e: number) =>
      integral(-bladeWidth / 2, bladeWidth / 2, (y) => flux.magnets(1, y + e).across);
    const ratio = mean(fluxOf('u-channel', { airGap: 2e-3 }), 1e-3) / mean(fluxOf('u-channel'), 0);
    expect(Math.abs(fitFactor(p, p.polePitch) / ratio - 1)).toBeLessThan(1e-6);
  });

  it('tubular: the mean over an eccentric winding, whose near side gains what the far side loses', () => {
    const e = 1e-3;
    const p = kit('tubular', { airGap: 1.5e-3, coilOffset: e });
    const { coilInner, coilOuter } = tubularSize(p);
    const eccentric = fluxOf('tubular', { airGap: 1.5e-3 });
    const linked = (flux: MotorFlux, inner: number, outer: number, off: number) => {
      // Flux linked by a circle about (off, 0): the mean of K0(kr) over it, times its radius and K1/K0 (addition theorem of the potential).
      const k = Math.PI / flux.polePitch;
      return (
        integral(
          inner,
          outer,
          (r) => {
            const turn = integral(
              0,
              2 * Math.PI,
              (angle) => flux.magnets(1, Math.hypot(r * Math.cos(angle) + off, r * Math.sin(angle))).along,
              64,
            );
            return (r * turn * besselK1(k * r)) / besselK0(k * r);
          },
          40,
        ) /
        (outer - inner)
      );
    };
    const nominal = tubularSize(kit('tubular'));
    const ratio =
      linked(eccentric, coilInner, coilOuter, e) /
      linked(fluxOf('tubular'), nominal.coilInner, nominal.coilOuter, 0);
    expect(Math.abs(fitFactor(p, p.polePitch) / ratio - 1)).toBeLessThan(1e-4);

    const middle = eccentric.winding.middle;
    const b = (r: number) => eccentric.magnets(1, r).across;
    const [near, far] = [b(middle - e) / b(middle) - 1, 1 - b(middle + e) / b(middle)];
    expect(near).toBeGreaterThan(0.1);
    expect(Math.abs(near - far)).toBeLessThan(0.02);
    const change = fitFactor(p, p.polePitch) / fitFactor({ ...p, coilOffset: 0 }, p.polePitch) - 1;
    expect(change).toBeGreaterThan(0);
    expect(change).toBeLessThan(0.003);
  });
});

import { describe, expect, it } from 'vitest';
import { fitFactor, ironFactor } from '../../shared/axis/field.ts';
import { besselI0 } from '../../shared/axis/flux/bessel.ts';
import { motorConstants } from '../../shared/axis/motor.ts';
import { defaultParameters, type ParameterChanges } from '../../shared/core/parameters/table.ts';
import { CURRENTS, newState, stateCount, X1 } from '../../workers/model/state.ts';
import { Windings } from '../../workers/model/terms/windings.ts';

const parameters = (changes: ParameterChanges) => ({ ...defaultParameters(), ...changes });

/** Mean of f over a full turn; spectrally accurate for a smooth periodic f. */
function meanOverTurn(f: (angle: number) => number, points = 200): number {
  let sum = 0;
  for (let k = 0; k < points; k++) sum += f((2 * Math.PI * k) / points);
  return sum / points;
}

describe('modified Bessel function I0', () => {
  // Abramowitz & Stegun, Handbook of Mathematical Functions, table 9.8, from memory.
  it.each([
    [1, 1.2660658778],
    [2, 2.2795853023],
  ])('of %d is the tabulated %d', (u, tabulated) => {
    expect(Math.abs(besselI0(u) - tabulated)).toBeLessThan(1e-10);
  });

  // Abramowitz & Stegun 9.8.1, error below 1.6e-7 for |u| <= 3.75; coefficients from memory.
  const polynomial = (u: number) => {
    const t = (u / 3.75) ** 2;
    const tail = 0.2659732 + t * (0.0360768 + t * 0.0045813);
    return 1 + t * (3.5156229 + t * (3.0899424 + t * (1.2067492 + t * tail)));
  };
  it.each([0.01, 0.1047, 0.3, 1.7, 3.75])('of %d agrees with the published polynomial', (u) => {
    expect(Math.abs(besselI0(u) - polynomial(u))).toBeLessThan(1.6e-7);
  });

  // Abramowitz & Stegun 9.6.16: I0(u) = (1/π) ∫ exp(u cos θ) dθ over half a turn.
  it.each([-0.3, 0, 0.1047, 2, 12])('of %d agrees with its integral', (u) => {
    const integral = meanOverTurn((angle) => Math.exp(u * Math.cos(angle)));
    expect(Math.abs(besselI0(u) / integral - 1)).toBeLessThan(1e-13);
  });
});

describe('flux of a coil off its centre', () => {
  const tau = 0.03;
  const k = Math.PI / tau;

  it.each([
    ['bessel', 1e-3],
    ['bessel', -2.5e-3],
  ] as const)(
    'law %s at %d m: mean of the field K0(kr) of a shaft over an eccentric circle',
    (fieldLaw, e) => {
      // Abramowitz & Stegun 9.6.24: K0(x) = ∫ exp(−x cosh t) dt from 0; trapezoids converge exponentially here.
      const K0 = (x: number) => {
        let sum = Math.exp(-x) / 2;
        for (let n = 1; n < 400; n++) sum += Math.exp(-x * Math.cosh(n / 40));
        return sum / 40;
      };
      const radius = 0.012;
      const field = meanOverTurn((angle) =>
        K0(k * Math.hypot(radius * Math.cos(angle) + e, radius * Math.sin(angle))),
      );
      const fit = fitFactor(parameters({ fieldLaw, coilOffset: e }), tau);
      expect(Math.abs(fit / (field / K0(k * radius)) - 1)).toBeLessThan(1e-12);
    },
  );

  it('law cosh: sum of the fields of two magnet rows, each decaying as exp(−πy/τ)', () => {
    // Decay of the fundamental of a row of magnets: solution of Laplace's equation, e.g. Mallinson 1973.
    const half = 4e-3;
    const e = 1.5e-3;
    const rows = Math.exp(-k * (half - e)) + Math.exp(-k * (half + e));
    const fit = fitFactor(parameters({ fieldLaw: 'cosh', coilOffset: e }), tau);
    expect(Math.abs(fit / (rows / (2 * Math.exp(-k * half))) - 1)).toBeLessThan(1e-14);
  });

  it('rises by 0.27 % at 1 mm around a shaft of 30 mm pole pitch', () => {
    // First terms of the series, Abramowitz & Stegun 9.6.12: u²/4 + u⁴/64.
    const u = Math.PI / 30;
    const rise = fitFactor(parameters({ fieldLaw: 'bessel', coilOffset: 1e-3 }), tau) - 1;
    expect(Math.abs(rise - (u ** 2 / 4 + u ** 4 / 64))).toBeLessThan(1e-8);
    expect((rise * 100).toFixed(2)).toBe('0.27');
  });

  it.each(['cosh', 'bessel'] as const)('law %s leaves the field in the iron alone', (fieldLaw) => {
    expect(ironFactor(parameters({ fieldLaw, coilOffset: 2e-3, airGap: 2.2e-3 }))).toBe(1);
  });
});

describe('a magnet behind an air gap', () => {
  // Load line of a magnet behind an air gap, B = Br h_m/(h_m + μ_r g): Fitzgerald, Kingsley, Umans, Electric
  // Machinery, 6th ed. 2003, ch. 1; 0.991736 T derived from it for these values.
  const remanence = 1.2;
  const magnet = { fieldLaw: 'gap', magnetHeight: 5e-3, recoilPermeability: 1.05 } as const;
  const tau = 0.024;

  it('has 0.99174 T in a gap of 1 mm', () => {
    const closed = fitFactor(parameters({ ...magnet, airGap: 1e-3, nominalGap: 0 }), tau);
    expect(Math.abs(remanence * closed - 0.991735537)).toBeLessThan(1e-9);
  });

  it('keeps its flux at the nominal gap', () => {
    expect(fitFactor(parameters({ ...magnet, airGap: 0.8e-3, nominalGap: 0.8e-3 }), tau)).toBe(1);
  });

  // Maxwell stress B²/(2 μ0); J. Synchrotron Radiation 2003 states 0.4 MPa at 1 T. Here the attraction per pole area
  // at 1 T, carried by the gap law to the gaps where the load line gives 0.5 T and 0.8 T.
  it.each([
    [0.5, 99471.8],
    [0.8, 254648],
    [1.0, 397887],
  ])('pulls with the Maxwell stress at %d T', (tesla, pascal) => {
    const gapFor = (b: number) => (magnet.magnetHeight * (remanence / b - 1)) / magnet.recoilPermeability;
    const p = parameters({ ...magnet, airGap: gapFor(tesla), nominalGap: gapFor(1) });
    const atOneTesla = 1 / (2 * 4e-7 * Math.PI);
    expect(Math.abs(atOneTesla * ironFactor(p) - pascal)).toBeLessThan(1);
  });
});

describe('force and current of a synchronous motor', () => {
  it('adds up the forces B·I·l on the conductors of three phases', () => {
    // Bird, Electrical Circuit Theory and Technology, ch. 8, example 2: 0.9 T, 20 A, 0.3 m give 5.4 N on one conductor.
    // Three conductors a third of a period apart, currents in phase with the field, at any electrical angle.
    const [tesla, ampere, length] = [0.9, 20, 0.3];
    const conductors = (angle: number) =>
      [0, 1, 2]
        .map((phase) => Math.cos(angle - (2 * Math.PI * phase) / 3))
        .reduce((sum, wave) => sum + tesla * wave * (ampere * wave) * length, 0);
    // Induced voltage of one conductor per speed, B·l, is the amplitude (π/τ) ψ of the model.
    const forceConstant = 1.5 * tesla * length * Math.SQRT2;
    const p = parameters({
      forceConstant,
      fieldLaw: 'none',
      magnetTempCoefficient: 0,
      ripple6: 0,
      ripple12: 0,
    });
    const windings = new Windings(1);
    windings.configure(p);
    windings.warm({ winding: 20, carrier: 20, table: 20, screw: 20 });
    const y = newState(stateCount(1, false));
    y[X1] = 0.0123;
    y[CURRENTS + 1] = ampere;
    const force = windings.force(y);
    for (const angle of [0, 0.4, 1.3, 2.9]) expect(Math.abs(force - conductors(angle))).toBeLessThan(1e-12);
    expect(Math.abs(force - 1.5 * 5.4)).toBeLessThan(1e-12);
  });

  /** Rotary machine as a screw of 2π m lead (1 m is 1 rad), its torque constant from an open-circuit voltage. */
  function machine(polePairs: number, lineVoltageRms: number, speed: number) {
    const perUnit = motorConstants(parameters({ lead: 2 * Math.PI, polePairs, torqueConstant: 1 }));
    const torqueConstant = lineVoltageRms / speed / perUnit.backEmf;
    return motorConstants(parameters({ lead: 2 * Math.PI, polePairs, torqueConstant }));
  }
  const radPerSecond = (rpm: number) => (rpm * 2 * Math.PI) / 60;

  it('needs 48.2 A for 65 % of rated torque (permanent magnets, 25 kW)', () => {
    // Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed. 2003, example 11.10, p. 593: two poles, 220 V line to
    // line at 3200 r/min without load, 25 kW at 4000 r/min.
    const motor = machine(1, 220, radPerSecond(3200));
    const torque = 0.65 * (25e3 / radPerSecond(4000));
    expect(Math.abs(torque / motor.forcePerAmp - 48.2)).toBeLessThan(0.05);
  });

  it('needs 167.01 A for rated torque (wound field, 45 kW)', () => {
    // The same, example 11.8, p. 588: six poles, 220 V line to line at 60 Hz, 45 kW, i_D = 0; peak phase current.
    const synchronous = (2 * Math.PI * 60) / 3;
    const motor = machine(3, 220, synchronous);
    expect(Math.abs(45e3 / synchronous / motor.forcePerAmp - 167.01)).toBeLessThan(0.01);
  });
});

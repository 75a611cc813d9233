import { describe, expect, it } from 'vitest';
import { screwStrain } from '../../shared/axis/growth.ts';
import { motorConstants } from '../../shared/axis/motor.ts';
import { at, present, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import { Plant } from '../../workers/model/plant.ts';
import {
  CURRENTS,
  E_COPPER,
  E_IN,
  F1,
  F2,
  newState,
  type State,
  stateCount,
  V1,
  V2,
  X1,
  X2,
} from '../../workers/model/state.ts';
import { Axis } from '../../workers/run/axis.ts';
import { TickSolver } from '../../workers/solver/tickSolver.ts';
import { bareScene } from '../workers/model/sceneOf.ts';

const COLD = { winding: 20, carrier: 20, table: 20, screw: 20 };

function bench(changes: Parameters<typeof bareScene>[0], span: number) {
  const { parameters } = bareScene({ drive: 'off', ...changes });
  const plant = new Plant(parameters.motorCount, parameters.base);
  plant.configure(parameters, COLD);
  const y = plant.initialState(0);
  const n = stateCount(parameters.motorCount, parameters.base);
  const solver = new TickSolver(
    plant.listDerivative,
    span,
    new Array<number>(n).fill(1e-11),
    new Array<number>(n).fill(1e-13),
  );
  return { plant, y, advance: () => solver.advance(y, y) };
}

/** A vector of derivatives before any term has added to it. */
const nothing = (y: Readonly<State>): State => newState(y.length);

/** Forces of the link alone on motor and table, N, for positions (m) and speeds (m/s). */
function linkForces(plant: Plant, x1: number, v1: number, x2: number, v2: number) {
  const y = plant.initialState(0);
  [y[X1], y[V1], y[X2], y[V2]] = [x1, v1, x2, v2];
  const dy = nothing(y);
  plant.terms.link.evaluate(y, dy);
  return { onMotor: dy[F1], onTable: dy[F2] };
}

/** Mean period of a swinging value from its upward crossings of zero. */
function periodOf(value: () => number, advance: () => void, span: number, ticks: number): number {
  const crossings: number[] = [];
  let before = value();
  for (let k = 1; k <= ticks; k++) {
    advance();
    const now = value();
    if (before < 0 && now >= 0) crossings.push((k - now / (now - before)) * span);
    before = now;
  }
  return (present(crossings.at(-1)) - at(crossings, 0)) / (crossings.length - 1);
}

describe('mechanics against closed solutions', () => {
  it('two masses on a spring swing at √(k (1/m1 + 1/m2)) (any text on vibrations)', () => {
    const span = 2e-5;
    const { y, advance } = bench(
      { linkDamping: 0, linkStiffness: 1e7, coilMass: 2, tableMass: 10, payload: 4 },
      span,
    );
    y[X1] = 1e-5;
    const omega = Math.sqrt(1e7 * (1 / 2 + 1 / 14));
    const period = periodOf(() => at(y, X1) - at(y, X2), advance, span, 20000);
    expect((period * omega) / (2 * Math.PI)).toBeCloseTo(1, 6);
  });

  it('the base swings on its mounts at its own frequency with everything on it', () => {
    const span = 1e-3;
    const { plant, y, advance } = bench(
      { base: true, baseMass: 500, baseFrequency: 12, baseDamping: 0 },
      span,
    );
    y[CURRENTS + 2] = 1e-4;
    const period = periodOf(() => plant.terms.base.position(y), advance, span, 4000);
    // The table is free on its guide: it stays behind, so only the base itself swings.
    expect(1 / period).toBeCloseTo(12, 4);
  });

  it('a vertical axis without counterbalance falls by ½ g t² when the drive is off', () => {
    const axis = new Axis(
      bareScene({
        drive: 'off',
        inclination: Math.PI / 2,
        start: 0.25,
        program: 'hold',
        travelMin: -0.3,
        travelMax: 0.3,
      }),
    );
    const ticks = 0.25 * axis.parameters.currentRate;
    for (let k = 0; k <= ticks; k++) axis.step();
    const t = valueAt(axis.record, C.time);
    expect(t).toBeCloseTo(0.25, 12);
    expect(axis.record[C.tablePosition]).toBeCloseTo(0.25 - 0.5 * 9.80665 * t * t, 9);
  });

  it('a counterbalance of m g holds it', () => {
    const { tableMass, payload, coilMass } = bareScene().parameters;
    const axis = new Axis(
      bareScene({
        drive: 'off',
        inclination: Math.PI / 2,
        program: 'hold',
        counterbalance: (tableMass + payload + coilMass) * 9.80665,
      }),
    );
    for (let k = 0; k < 1600; k++) axis.step();
    // Only the coil unit, which hangs on its mounting, sags: m1 g/k12.
    expect(Math.abs(valueAt(axis.record, C.tablePosition) - axis.parameters.start)).toBeLessThan(1e-6);
  });

  it('a nut in the middle of its lost motion passes nothing on, and contact never pulls', () => {
    const { plant } = bench({ backlash: 4e-6, linkDamping: 1e5 }, 1e-4);
    expect(linkForces(plant, 1e-6, 0.1, 0, 0).onTable).toBe(0);
    expect(linkForces(plant, 3e-6, -0.5, 0, 0.5).onTable).toBe(0);
    expect(linkForces(plant, 3e-6, 0, 0, 0).onTable).toBeCloseTo(
      1e-6 * bareScene().parameters.linkStiffness,
      9,
    );
  });

  it('a screw is soft where it is long: EA/L (ball-screw catalogues; d 30 mm, L 1 m, E 206 kN/mm² gives 145.61 N/µm)', () => {
    const area = (Math.PI / 4) * 0.03 ** 2;
    const { plant } = bench({ screwRigidity: 2.06e11 * area, screwSpan: 1, linkStiffness: 2e9 }, 1e-4);
    const compliance = 1e-6 / -linkForces(plant, 1e-6, 0, 0, 0).onMotor;
    expect(1 / (compliance - 1 / 2e9) / 1e6).toBeCloseTo(145.61, 2);
  });

  // Midway between two fixed bearings four times as stiff: 4 EA/L (ball-screw handbooks; d 30 mm, L 1 m, E 206 kN/mm²: 582.45 N/µm).
  it('a screw between two fixed bearings carries with both of its sides', () => {
    const area = (Math.PI / 4) * 0.03 ** 2;
    const held = { screwRigidity: 2.06e11 * area, screwSpan: 0.5, screwSupport: 'fixed' } as const;
    const { plant } = bench({ ...held, linkStiffness: 2e9 }, 1e-4);
    const stiffnessAt = (x: number) => {
      const compliance = 1e-6 / -linkForces(plant, x + 1e-6, 0, x, 0).onMotor;
      return 1 / (compliance - 1 / 2e9) / 1e6;
    };
    expect(stiffnessAt(0)).toBeCloseTo(582.45, 2);
    // EA/0.3 m and EA/0.7 m side by side.
    expect(stiffnessAt(-0.2)).toBeCloseTo(145.61 / 0.3 + 145.61 / 0.7, 1);
    expect(stiffnessAt(0.2)).toBeCloseTo(stiffnessAt(-0.2), 6);
  });

  // A spring gives back what was put in: both forces are slopes of its energy, ½ F²/k, here by central differences.
  it.each(['supported', 'fixed', 'free'] as const)('a screw that is %s keeps its energy', (screwSupport) => {
    const held = { screwRigidity: 1e7, screwSpan: 0.5, linkDamping: 0, screwSupport } as const;
    const { plant } = bench(held, 1e-4);
    const energyOf = (x1: number, x2: number) => {
      const y = plant.initialState(0);
      [y[X1], y[X2]] = [x1, x2];
      const store = { energy: 0 };
      plant.terms.link.store(y, store);
      return store.energy;
    };
    const [x1, x2, h] = [0.101, 0.1, 1e-6];
    const { onMotor, onTable } = linkForces(plant, x1, 0, x2, 0);
    const slope = (a: number, b: number) => (a - b) / (2 * h);
    expect(-slope(energyOf(x1 + h, x2), energyOf(x1 - h, x2)) / onMotor).toBeCloseTo(1, 7);
    expect(-slope(energyOf(x1, x2 + h), energyOf(x1, x2 - h)) / onTable).toBeCloseTo(1, 7);
  });

  // Thermal strain of steel, 11.7·10⁻⁶/K (handbook value): what stretched the screw cold is given back before it grows.
  it('a screw that is stretched for 3 K keeps its length for 3 K', () => {
    const held = { screwExpansion: 11.7e-6, screwSpan: 1, ambient: 20, screwSupport: 'fixed' } as const;
    const { parameters } = bareScene({ ...held, screwPretension: 3 });
    expect(screwStrain(parameters, 22)).toBe(0);
    expect(screwStrain(parameters, 23)).toBe(0);
    expect(screwStrain(parameters, 25)).toBeCloseTo(23.4e-6, 15);
    expect(screwStrain({ ...parameters, screwPretension: 0 }, 25)).toBeCloseTo(58.5e-6, 15);
    expect(screwStrain({ ...parameters, screwSupport: 'supported' }, 25)).toBeCloseTo(58.5e-6, 15);
  });

  it('a steel screw grows by 11.7 µm per metre and kelvin (handbook value, ISO)', () => {
    const { parameters } = bareScene({ screwExpansion: 11.7e-6, screwSpan: 1, ambient: 20 });
    const plant = new Plant(1, false);
    plant.configure(parameters, { ...COLD, screw: 23 });
    const { onMotor } = linkForces(plant, 0, 0, 35.1e-6, 0);
    expect(Math.abs(onMotor) / parameters.linkStiffness).toBeLessThan(2e-9);
  });

  it('power turned into motion equals 1.5 e i, sample by sample, whatever ripple, saturation and misalignment', () => {
    const { parameters } = bareScene({
      motorCount: 3,
      misalignment2: 0.004,
      misalignment3: -0.002,
      ripple6: 0.02,
      ripple12: 0.01,
      saturationCurrent: 12,
      fieldLaw: 'bessel',
      coilOffset: 1e-3,
    });
    const plant = new Plant(3, false);
    plant.configure(parameters, { ...COLD, winding: 90 });
    const y = plant.initialState(0.0137);
    y[V1] = 0.8;
    y[V2] = 0.8;
    [1, 7, -2, 9, 0.5, -4].forEach((i, k) => {
      y[CURRENTS + k] = i;
    });
    const { windings } = plant.terms;
    windings.voltageD = 3;
    windings.voltageQ = 40;
    const dy = nothing(y);
    windings.evaluate(y, dy);
    const { inductance } = motorConstants(parameters);
    let magnetic = 0;
    for (let k = CURRENTS; k < CURRENTS + 6; k++) magnetic += 1.5 * inductance * at(y, k) * at(dy, k);
    expect(dy[E_IN] - dy[E_COPPER] - magnetic).toBeCloseTo(dy[F1] * 0.8, 9);
  });
});

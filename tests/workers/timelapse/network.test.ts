import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import type { Temperatures } from '../../../workers/model/state.ts';
import type { Cycle, CyclePart } from '../../../workers/timelapse/cycle.ts';
import { CycleMap } from '../../../workers/timelapse/cycleMap.ts';
import { timeLapse } from '../../../workers/timelapse/timeLapse.ts';
import { DUTIES } from '../../benchmarks/lapse/duties.ts';
import { bareScene } from '../model/sceneOf.ts';

const AMBIENT: Temperatures = { winding: 20, carrier: 20, table: 20, screw: 20 };
const IDLE: Omit<CyclePart, 'duration'> = { squares: 0, iron: 0, guide: 0, nut: 0, draught: 1 };

function cycleOf(parts: readonly CyclePart[]): Cycle {
  return {
    at: AMBIENT,
    folded: false,
    duration: parts.reduce((sum, { duration }) => sum + duration, 0),
    parts,
    usefulPower: 0,
    forcePerAmp: 1,
    fluxExponent: 1,
    rmsForce: 0,
    rmsCurrent: 0,
    currentUse: 0,
    overloaded: false,
    from: 0,
    to: 0,
  };
}

describe('whole cycles of heat, against closed solutions', () => {
  it('swing between 40 K and 49.9 K on an intermittent duty (Dubey, Fundamentals of Electrical Drives, Ex 4.1 p. 47)', () => {
    // 10 s on heading for 104.4 K, 20 s off heading for 15 K, τ = 60 s: the screw is a node by itself.
    const { parameters: p } = bareScene({ screwCapacity: 60, screwToAir: 1 });
    const cycle = cycleOf([
      { ...IDLE, duration: 10, nut: 104.4 },
      { ...IDLE, duration: 20, nut: 15 },
    ]);
    const map = new CycleMap(p, cycle, AMBIENT);
    const passed = map.through(present(map.fixedPoint(p)));
    const [start, afterHeating, end] = [at(passed, 0), at(passed, 1), at(passed, 2)];
    expect(Math.abs(start.screw - 20 - 40)).toBeLessThan(0.05);
    expect(Math.abs(afterHeating.screw - 20 - 49.9)).toBeLessThan(0.05);
    expect(end.screw).toBeCloseTo(start.screw, 9);
    // From cold it gets there by the same 30 s at a time.
    expect(map.after(AMBIENT, 40).screw).toBeCloseTo(start.screw, 6);
  });

  it('approach a constant loss with the time constants of the network', () => {
    const { parameters: p } = bareScene({
      windingCapacity: 300,
      carrierCapacity: 1500,
      windingToCarrier: 6,
      carrierToAir: 2,
      carrierToTable: 0,
    });
    const power = 80;
    const map = new CycleMap(p, cycleOf([{ ...IDLE, duration: 2, iron: power }]), AMBIENT);
    // Two nodes: C_w w' = G (h − w), C_h h' = G (w − h) + P − A h. Poles of s² + s (G/C_w + (G + A)/C_h) + G A/(C_w C_h).
    const [cw, ch, g, a] = [p.windingCapacity, p.carrierCapacity, p.windingToCarrier, p.carrierToAir];
    const half = (g / cw + (g + a) / ch) / 2;
    const root = Math.sqrt(half ** 2 - (g * a) / (cw * ch));
    const [slow, fast] = [half - root, half + root];
    const settled = power / a;
    // w(0) = 0 and w'(0) = 0.
    const winding = (t: number) =>
      settled * (1 - (fast * Math.exp(-slow * t) - slow * Math.exp(-fast * t)) / (fast - slow));
    for (const cycles of [1, 7, 60, 500, 3001]) {
      expect(map.after(AMBIENT, cycles).winding - 20).toBeCloseTo(winding(2 * cycles), 8);
    }
    expect(present(map.fixedPoint(p)).winding - 20).toBeCloseTo(settled, 8);
  });

  it('settle where copper that heats itself balances: P0/(G − P0 α) (IEC 60028)', () => {
    const { parameters: p } = bareScene({ carrierToTable: 0, windingToCarrier: 2, carrierToAir: 2 });
    // 0.5 W per kelvin of the two conductances of 2 W/K in series is 1 W/K; phase resistance R_ll/2.
    const squares = 40 / (p.resistance / 2);
    const map = new CycleMap(p, cycleOf([{ ...IDLE, duration: 1, squares }]), AMBIENT);
    expect(present(map.fixedPoint(p)).winding - 20).toBeCloseTo(40 / (1 - 40 * 0.00393), 6);
  });

  it('do not settle when losses outgrow the flow of heat', () => {
    const { parameters: p } = bareScene({ carrierToTable: 0, windingToCarrier: 2, carrierToAir: 2 });
    // Runaway from P0 α = G on: 1/0.00393 = 254.5 W at 20 °C.
    const at = (watts: number) => {
      const squares = watts / (p.resistance / 2);
      return new CycleMap(p, cycleOf([{ ...IDLE, duration: 1, squares }]), AMBIENT).fixedPoint(p);
    };
    expect(at(250)).not.toBeNull();
    expect(at(260)).toBeNull();
  });
});

describe('a settled axis', () => {
  it.each(['flat', 'screw'] as const)('gives off what it takes in: %s', (drive) => {
    const { parameters: p } = DUTIES[drive];
    const { steady } = timeLapse(DUTIES[drive], { hours: 0.1 }).asSet;
    const { copper, iron, guide, nut, table, screw, sinkHeat, electricPower } = present(steady);
    const lost = copper + iron + guide + nut;
    const givenOff = sinkHeat + p.tableToAir * (table - p.ambient) + p.screwToAir * (screw - p.ambient);
    expect(Math.abs(givenOff / lost - 1)).toBeLessThan(1e-4);
    // The rest of the electrical power is lost in the link's damper; a shuttle does no work on anything.
    expect(electricPower).toBeGreaterThan(lost);
    expect(electricPower / lost - 1).toBeLessThan(0.01);
  });
});

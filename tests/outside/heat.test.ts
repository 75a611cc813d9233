import { describe, expect, it } from 'vitest';
import { windingToAmbientResistance } from '../../shared/axis/motor.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { HeatNetwork, startTemperatures } from '../../workers/model/heat.ts';
import { bareScene } from '../workers/model/sceneOf.ts';

const networkOf = (p: Parameters) => new HeatNetwork(p, startTemperatures(p));

describe('heat network against closed solutions', () => {
  it('a single node rises as P/G (1 − exp(−t/τ))', () => {
    const { parameters: p } = bareScene({ windingCapacity: 120, windingToCarrier: 2, carrierCapacity: 1e6 });
    const heat = networkOf(p);
    const dt = 0.01;
    for (let t = 0; t < 60 - dt / 2; t += dt)
      heat.step(dt, { copper: 50 * dt, iron: 0, guide: 0, nut: 0 }, 0);
    // τ = 60 s; explicit Euler is off by dt/2τ of the step at most, the carrier of 1 MJ/K warms by 2 mK.
    expect(heat.temperatures.winding - 20).toBeCloseTo((50 / 2) * (1 - Math.exp(-1)), 1);
    expect(Math.abs(heat.temperatures.winding - 20 - 25 * (1 - Math.exp(-1)))).toBeLessThan(0.01);
  });

  it('settles where the resistances of the datasheet say', () => {
    const { parameters: p } = bareScene({ speedCooling: 0 });
    const heat = networkOf(p);
    for (let k = 0; k < 2e5; k++) heat.step(1, { copper: 30, iron: 0, guide: 0, nut: 0 }, 0);
    expect(heat.temperatures.winding - p.ambient).toBeCloseTo(30 * windingToAmbientResistance(p), 6);
  });

  it('swings between 40 K and 49.9 K on an intermittent duty (Dubey, Fundamentals of Electrical Drives, Ex 4.1 p. 47)', () => {
    // 10 s on heading for 104.4 K, 20 s off heading for 15 K, τ = 60 s.
    const { parameters: p } = bareScene({
      windingCapacity: 60,
      windingToCarrier: 1,
      carrierCapacity: 1e6,
      ambient: 0,
      windingStart: 40,
      carrierStart: 0,
    });
    const heat = networkOf(p);
    const dt = 0.005;
    const head = (target: number, seconds: number) => {
      for (let k = 0; k < seconds / dt; k++)
        heat.step(dt, { copper: target * dt, iron: 0, guide: 0, nut: 0 }, 0);
      heat.temperatures.carrier = 0;
      return heat.temperatures.winding;
    };
    for (let cycle = 0; cycle < 5; cycle++) {
      expect(Math.abs(head(104.4, 10) - 49.9)).toBeLessThan(0.05);
      expect(Math.abs(head(15, 20) - 40)).toBeLessThan(0.05);
    }
  });

  it('keeps every joule', () => {
    const { parameters: p } = bareScene({ ambient: 25 });
    const sealed = { carrierToAir: 0, tableToAir: 0, screwToAir: 0 };
    const heat = networkOf({ ...p, ...sealed, windingStart: 25, carrierStart: 25 });
    for (let k = 0; k < 1000; k++) heat.step(0.1, { copper: 3, iron: 0.5, guide: 0.4, nut: 0.2 }, 0.5);
    const { winding, carrier, table, screw } = heat.temperatures;
    const stored =
      p.windingCapacity * (winding - 25) +
      p.carrierCapacity * (carrier - 25) +
      p.tableCapacity * (table - 25) +
      p.screwCapacity * (screw - 25);
    expect(stored).toBeCloseTo(1000 * (3 + 0.5 + 0.4 + 0.2), 6);
  });

  it('cools an exposed coil better when it moves', () => {
    const { parameters: p } = bareScene({ speedCooling: 0.6 });
    const settle = (speed: number) => {
      const heat = networkOf(p);
      for (let k = 0; k < 1e5; k++) heat.step(1, { copper: 30, iron: 0, guide: 0, nut: 0 }, speed);
      return heat.temperatures.winding;
    };
    expect(settle(1)).toBeLessThan(settle(0) - 1);
  });
});

import { describe, expect, it } from 'vitest';
import type { EnergyFlow } from '../../../shared/protocol/accuracy.ts';
import { energyFlow } from '../../../workers/accuracy/energy.ts';
import { tunedScene } from './bench.ts';

const SHUTTLE = { stroke: 0.2, speed: 1, acceleration: 10, jerk: 500, dwell: 0.1 } as const;

/** What the losses, the work and what is stored leave of drawn less returned, as a share of what goes through. */
function imbalance(e: EnergyFlow): number {
  const out = e.returned + e.copper + e.iron + e.guide + e.nut + e.other + e.work + e.stored;
  return (e.drawn - out) / (e.drawn + e.returned);
}

describe('the energy of a cycle', () => {
  // Conservation of energy, at the tolerance of the energy audit.
  it.each([
    ['bare', {}],
    ['with everything that loses', { sealFriction: 5, viscous: 30, eddyDrag: 5, hysteresisDrag: 2 }],
    ['of a screw', { lead: 0.02, rotorInertia: 1.5e-4, nutDrag: 20, nutViscous: 30, polePairs: 4 }],
    ['on a soft base, uphill', { base: true, inclination: 0.5 }],
    ['of a process', { process: 'sine', processForce: 40, processFrequency: 10 }],
  ] as const)('balances, %s', (_, changes) => {
    const e = energyFlow(tunedScene(60, { ...SHUTTLE, ...changes }));
    expect(Math.abs(imbalance(e))).toBeLessThan(1e-6);
    for (const part of [e.drawn, e.returned, e.copper, e.iron, e.guide, e.nut, e.other])
      expect(part).toBeGreaterThanOrEqual(0);
  });

  // A cycle that repeats leaves nothing behind.
  it('is all used up when the axis is back where it was', () => {
    const e = energyFlow(tunedScene(60, SHUTTLE));
    expect(Math.abs(e.stored)).toBeLessThan(1e-4 * e.drawn);
    // Two moves of 0.2 m: 0.2/1 + 1/10 + 10/500 s and a dwell each.
    expect(e.cycleTime).toBeCloseTo(2 * (0.32 + 0.1), 3);
    expect(e.returned).toBeGreaterThan(0);
  });

  // Work is force times distance: a feed force F against the motion over two strokes, and Coulomb friction F_c over the same.
  it('goes as far as force and distance say', () => {
    const [processForce, sealFriction] = [50, 8];
    const e = energyFlow(
      tunedScene(60, { ...SHUTTLE, process: 'feed', processForce, sealFriction, sealStiction: sealFriction }),
    );
    expect(Math.abs(e.work / (2 * SHUTTLE.stroke * processForce) - 1)).toBeLessThan(0.01);
    expect(Math.abs(e.guide / (2 * SHUTTLE.stroke * sealFriction) - 1)).toBeLessThan(0.01);
  });

  // A motor that only brakes gives back what it takes: without resistance there would be no more drawn than returned. So with all else
  // lossless the net is the copper loss.
  it('of an axis without friction is drawn for the copper alone', () => {
    const e = energyFlow(tunedScene(60, SHUTTLE));
    expect(Math.abs((e.drawn - e.returned) / e.copper - 1)).toBeLessThan(1e-3);
  });
});

import { describe, expect, it } from 'vitest';
import { wornParameters } from '../../../shared/axis/wear.ts';
import { defaultParameters, type ParameterChanges } from '../../../shared/core/parameters/table.ts';

const KM = 1000;
const screw = (changes: ParameterChanges) => ({
  ...defaultParameters(),
  lead: 0.01,
  nutDrag: 20,
  backlash: 0.2e-6,
  nutWear: 0.5e-12,
  nutPreload: 2e-6,
  ...changes,
});

describe('kilometres', () => {
  it('leave a new machine as it is, to the last digit', () => {
    const p = screw({ kilometresTravelled: 0 });
    expect(wornParameters(p)).toBe(p);
  });

  // Archard: depth in proportion to distance, 0.5 nm/km · 3000 km = 1.5 µm; Hertz: (1 − 1.5/2)^1.5 = 1/8 of the preload.
  it('take the preload of a nut first, and its friction with it', () => {
    const worn = wornParameters(screw({ kilometresTravelled: 3000 * KM }));
    expect(worn.nutDrag).toBeCloseTo(20 / 8, 9);
    expect(worn.backlash).toBe(0.2e-6);
  });

  it('make lost motion of what wears after that', () => {
    const worn = wornParameters(screw({ kilometresTravelled: 10_000 * KM }));
    expect(worn.nutDrag).toBe(0);
    expect(worn.backlash).toBeCloseTo(3.2e-6, 12);
  });

  it('add lost motion from the start to a nut without preload, and leave its drag, which is not of preload', () => {
    const worn = wornParameters(screw({ kilometresTravelled: 1000 * KM, nutPreload: 0 }));
    expect(worn.nutDrag).toBe(20);
    expect(worn.backlash).toBeCloseTo(0.7e-6, 12);
  });

  it('take half of what preload rubs in a guide at half its distance, and no more than all', () => {
    const at = (kilometresTravelled: number) =>
      wornParameters({
        ...defaultParameters(),
        guideDistance: 1e7,
        sealFriction: 8,
        sealStiction: 10,
        kilometresTravelled,
      });
    expect(at(5e6)).toMatchObject({ sealFriction: 4, sealStiction: 5 });
    expect(at(2e7)).toMatchObject({ sealFriction: 0, sealStiction: 0 });
  });

  it('leave everything but the guide of a motor without contact', () => {
    const p = { ...defaultParameters(), kilometresTravelled: 1e7 };
    const { sealFriction, sealStiction, ...others } = wornParameters(p);
    expect({ ...others, sealFriction: p.sealFriction, sealStiction: p.sealStiction }).toEqual(p);
  });
});

import { describe, expect, it } from 'vitest';
import { breakawayForce, guideLoad, slidingFriction } from '../../../shared/axis/guide.ts';
import { defaultParameters, type ParameterChanges } from '../../../shared/core/parameters/table.ts';

const parameters = (changes: ParameterChanges) => ({
  ...defaultParameters(),
  tableMass: 8,
  payload: 2,
  fieldLaw: 'none' as const,
  ...changes,
});

describe('the load of the guide', () => {
  it('is the weight across the slope: half of it on an axis that rises by 60°', () => {
    expect(guideLoad(parameters({ attraction: 0, inclination: Math.PI / 3 }))).toBeCloseTo(49.03325, 9);
  });

  it('has the pull of the magnets of every motor on top, which falls with the square of the field', () => {
    const pull = { motorCount: 3, attraction: 100, inclination: Math.PI / 2 };
    expect(guideLoad(parameters(pull))).toBeCloseTo(300, 9);
    // B = Br h_m/(h_m + μ_r g): with μ_r 1 and 5 mm of magnet a gap of 5 mm instead of none halves the field.
    const gap = { magnetHeight: 5e-3, recoilPermeability: 1, nominalGap: 0, airGap: 5e-3 };
    expect(guideLoad(parameters({ ...pull, ...gap, fieldLaw: 'gap' }))).toBeCloseTo(75, 9);
  });

  it('counts in sliding and in breakaway, beside what needs no load', () => {
    const p = parameters({
      attraction: 0,
      inclination: 0,
      frictionCoefficient: 0.01,
      stictionCoefficient: 0.02,
      sealFriction: 3,
      sealStiction: 5,
    });
    expect(slidingFriction(p)).toBeCloseTo(0.980665 + 3, 9);
    expect(breakawayForce(p)).toBeCloseTo(1.96133 + 5, 9);
  });
});

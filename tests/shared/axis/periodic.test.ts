import { describe, expect, it } from 'vitest';
import { coggingTerms, interpolationTerms, rippleTerms } from '../../../shared/axis/periodic.ts';
import { defaultParameters, type ParameterChanges } from '../../../shared/core/parameters/table.ts';

const parameters = (changes: ParameterChanges) => ({ ...defaultParameters(), ...changes });

describe('what repeats along the axis', () => {
  it('is of cogging only what is not zero, for all motors together', () => {
    const cogging = { cogging1: 4, cogging2: 0, cogging3: 1.5, cogging3Period: 0.048, cogging3Phase: 0.7 };
    const terms = coggingTerms(parameters({ ...cogging, motorCount: 2, fieldLaw: 'none' }));
    expect(terms.map(({ amplitude }) => amplitude)).toEqual([8, 3]);
    expect(terms[1]).toEqual({ amplitude: 3, period: 0.048, phase: 0.7 });
    expect(coggingTerms(parameters({ cogging1: 0, cogging2: 0, cogging3: 0 }))).toEqual([]);
  });

  // A screw of 20 mm lead with four pole pairs has a pole pitch of 2.5 mm: six ripples in 5 mm of travel.
  it('is force ripple six and twelve times in two pole pitches, of a screw as well', () => {
    const periods = rippleTerms(parameters({ lead: 0.02, polePairs: 4 })).map(({ period }) => period);
    expect(periods).toEqual([5e-3 / 6, 5e-3 / 12]);
  });

  it('is the interpolation error once and twice in a signal period', () => {
    const terms = interpolationTerms(
      parameters({ signalPeriod: 2e-5, interpolation1: 1e-8, interpolation2: 0 }),
    );
    expect(terms).toEqual([
      { amplitude: 1e-8, period: 2e-5 },
      { amplitude: 0, period: 1e-5 },
    ]);
  });
});

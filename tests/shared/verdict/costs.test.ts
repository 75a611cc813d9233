import { describe, expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import type { JudgedCandidate } from '../../../shared/verdict/judgement.ts';
import { costsOf } from '../../../shared/verdict/rows/costs.ts';
import { recordedDrives, recordedJob } from '../study/recordedStudy.ts';
import { withDay } from './candidates.ts';

const job = recordedJob({ priceLow: 100, priceMedium: 500, priceHigh: 1000, years: 4 });
const { A, D } = recordedDrives(job);
const effortOf = (candidate: JudgedCandidate, label: RegExp) =>
  costsOf(candidate, job).parts.find((part) => label.test(part.label))?.effort;

describe('what a candidate costs', () => {
  it('is the efforts of its parts at the prices of the job', () => {
    // Coil unit, track of 0.67 m, optical scale, amplifier of 5.3 A: medium. Guide: low.
    const { purchase } = costsOf(A, job);
    expect(purchase).toBeCloseTo(500 + 0.67 * 500 + 100 + 500 + 500, 6);
  });

  it('is a price that was given, in place of those', () => {
    const own: JudgedCandidate = { ...A, choice: { ...A.choice, price: 1234 } };
    expect(costsOf(own, job).purchase).toBe(1234);
  });

  it('adds energy and upkeep of the years: 100 W for 8 h on 250 days are 200 kWh, for 50 a year', () => {
    const steady = withDay(A, (sample) => ({ ...sample, electricPower: 100 }));
    const { energy, upkeep, purchase, total } = costsOf(steady, job);
    expect(energy).toBeCloseTo(50, 9);
    // One rolling guide: a fifth of a low effort a year.
    expect(upkeep).toBeCloseTo(20, 9);
    expect(total).toBeCloseTo(purchase + 4 * 70, 9);
  });

  it('counts what a braking resistor burns, unless the supply feeds it back', () => {
    const burning = {
      ...A,
      sizing: {
        ...A.sizing,
        figures: A.sizing.figures.map((each) =>
          each.id === 'brakeResistor' ? { ...each, value: 20 } : each,
        ),
      },
    };
    const feedsBack = recordedJob({ regeneration: true });
    const energy = (candidate: JudgedCandidate, of = job) => present(costsOf(candidate, of).yearEnergy);
    expect((energy(burning) - energy(A)) / 3.6e6).toBeCloseTo((20 * 8 * 250) / 1000, 6);
    expect(energy(burning, feedsBack)).toBeCloseTo(energy(A, feedsBack), 6);
  });

  it('of a screw has a servomotor, a nut to grease, and no scale', () => {
    expect(effortOf(D, /Servomotor/)).toBe('low');
    expect(effortOf(D, /Encoder/)).toBeUndefined();
    expect(costsOf(D, job).upkeep).toBeCloseTo(2 * 20, 9);
    expect(costsOf(D, job).purchase).toBeLessThan(costsOf(A, job).purchase);
  });
});

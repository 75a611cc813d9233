import { describe, expect, it } from 'vitest';
import { seeded } from '../../../shared/core/seeded.ts';
import { times, unit } from '../../../workers/math/complex.ts';
import { ComplexArray } from '../../../workers/math/complexArray.ts';
import { fourier, paddedLength, transformOf } from '../../../workers/math/fourier.ts';
import { sumOfSquares } from '../../../workers/math/statistics.ts';

describe('Fourier transform', () => {
  const SIZE = 64;
  const random = seeded(3);
  const record = ComplexArray.from(
    Array.from({ length: SIZE }, () => ({ re: random() - 0.5, im: random() - 0.5 })),
  );
  const transform = record.slice(0, SIZE);
  fourier(transform);

  it('is the sum that defines it', () => {
    for (let k = 0; k < SIZE; k++) {
      let [re, im] = [0, 0];
      for (let n = 0; n < SIZE; n++) {
        const term = times(record.at(n), unit((-2 * Math.PI * n * k) / SIZE));
        re += term.re;
        im += term.im;
      }
      expect(transform.at(k).re).toBeCloseTo(re, 12);
      expect(transform.at(k).im).toBeCloseTo(im, 12);
    }
  });

  it('keeps the energy (Parseval)', () => {
    const energy = ({ re, im }: ComplexArray) => sumOfSquares(re) + sumOfSquares(im);
    expect(energy(transform) / SIZE).toBeCloseTo(energy(record), 10);
  });

  it('refuses a length that is not a power of two', () => {
    expect(() => fourier(new ComplexArray(12))).toThrow(/length is 12/);
  });

  it('of a record with zeros behind it meets that of the record at every second line', () => {
    const values = Array.from({ length: 8 }, () => random() - 0.5);
    const [plain, padded] = [transformOf(values), transformOf(values, 16)];
    expect([plain.length, padded.length]).toEqual([8, 16]);
    for (let k = 0; k < 8; k++) {
      expect(padded.at(2 * k).re).toBeCloseTo(plain.at(k).re, 12);
      expect(padded.at(2 * k).im).toBeCloseTo(plain.at(k).im, 12);
    }
  });

  it.each([
    [1, 1],
    [2, 2],
    [3, 4],
    [1024, 1024],
    [1025, 2048],
  ])('%i values are padded to %i', (count, size) => {
    expect(paddedLength(count)).toBe(size);
  });
});

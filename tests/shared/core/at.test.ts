import { describe, expect, it } from 'vitest';
import { at, valueAt } from '../../../shared/core/at.ts';

describe('an element by its index', () => {
  it('is the element, a zero and an empty text as well', () => {
    expect(at([3, 0], 1)).toBe(0);
    expect(at(['a', ''], 1)).toBe('');
    expect(valueAt(Float64Array.of(2, 0), 1)).toBe(0);
    expect(valueAt(Float64Array.of(Number.NaN), 0)).toBeNaN();
  });

  it.each([-1, 2, 0.5, Number.NaN])(
    '%s outside the list is an error that names index and length',
    (index) => {
      const message = `Index ${index} lies outside a list of 2.`;
      expect(() => at([1, 2], index)).toThrow(new RangeError(message));
      expect(() => valueAt(Float64Array.of(1, 2), index)).toThrow(new RangeError(message));
    },
  );
});

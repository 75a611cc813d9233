import { describe, expect, it } from 'vitest';
import type { NumberRow } from '../../../../shared/core/parameters/row.ts';
import { PARAMETERS } from '../../../../shared/core/parameters/table.ts';
import { sliderScale } from '../../../../src/ui/fields/logScale.ts';

const numberRows = Object.entries(PARAMETERS).filter(
  (entry): entry is [string, NumberRow & { kind: 'number' }] => {
    return entry[1].kind === 'number';
  },
);

describe('slider scale', () => {
  it.each(numberRows)('%s: every position is legal, rising, and finds itself again', (_name, row) => {
    const { steps, valueAt, positionOf } = sliderScale(row);
    expect(valueAt(0)).toBe(row.scale === 'log' && row.zero ? 0 : row.min);
    expect(valueAt(steps)).toBe(row.max);
    let last = Number.NEGATIVE_INFINITY;
    const stride = Math.max(1, Math.floor(steps / 97));
    for (let position = 0; position <= steps; position += stride) {
      const value = valueAt(position);
      const off = row.zero && value === 0;
      expect(off || (value >= row.min && value <= row.max)).toBe(true);
      expect(value).toBeGreaterThanOrEqual(last);
      if (row.integer) expect(value).toBe(Math.round(value));
      if (steps > 10 && !row.integer) expect(Math.abs(positionOf(value) - position)).toBeLessThanOrEqual(1);
      last = value;
    }
  });

  it('spans decades evenly: half the way is the geometric mean', () => {
    const { steps, valueAt } = sliderScale(PARAMETERS.baseMass);
    const { min, max } = PARAMETERS.baseMass;
    expect(valueAt(Math.round(steps / 2)) / Math.sqrt(min * max)).toBeCloseTo(1, 1);
  });

  it('has "off" leftmost where zero is legal, and the range right of it', () => {
    const { valueAt, positionOf } = sliderScale(PARAMETERS.Kp);
    expect([valueAt(0), valueAt(1)]).toEqual([0, PARAMETERS.Kp.min]);
    expect([positionOf(0), positionOf(PARAMETERS.Kp.min)]).toEqual([0, 1]);
  });

  it('passes exactly through zero in the middle of a symmetric range', () => {
    const { steps, valueAt } = sliderScale(PARAMETERS.forceBias);
    expect(valueAt(steps / 2)).toBe(0);
  });
});

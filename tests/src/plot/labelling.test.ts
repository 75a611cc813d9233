import { describe, expect, it } from 'vitest';
import { labelling, labelText, readingText, unitText } from '../../../src/plot/labelling.ts';

/** Labels of the ticks, the unit, and what they are counted from. */
function axis(low: number, high: number, step: number, unit: 'mm' | 'A' | 's' | '°C') {
  const labels = labelling(low, high, step, unit);
  const ticks: string[] = [];
  for (let k = Math.ceil(low / step - 1e-6); k <= high / step + 1e-6; k++)
    ticks.push(labelText(k * step, labels));
  return [ticks.join(' '), unitText(labels, unit)];
}

describe('labels of an axis', () => {
  it('choose the unit that suits the size', () => {
    expect(axis(-0.1, 0.1, 0.1, 'mm')).toEqual(['−100 0 100', 'mm']);
    expect(axis(-2e-3, 2e-3, 1e-3, 'mm')).toEqual(['−2 −1 0 1 2', 'mm']);
    expect(axis(-4e-6, 1e-6, 2e-6, 'mm')).toEqual(['−4 −2 0', 'µm']);
    expect(axis(-6e-9, 6e-9, 5e-9, 'mm')).toEqual(['−5 0 5', 'nm']);
    expect(axis(0, 0.012, 0.005, 'A')).toEqual(['0 5 10', 'mA peak']);
    expect(axis(0, 1.2, 0.5, 'A')).toEqual(['0.0 0.5 1.0', 'A peak']);
    expect(axis(21.5, 23, 0.5, '°C')).toEqual(['21.5 22.0 22.5 23.0', '°C']);
  });

  it('count fine detail far from zero from a base, and say which', () => {
    expect(axis(0.3 - 6e-9, 0.3 + 6e-9, 5e-9, 'mm')).toEqual(['−5 0 5', 'nm from 300.000000 mm']);
    expect(axis(-0.1 - 2e-6, -0.1 + 3e-6, 2e-6, 'mm')).toEqual(['−2 0 2', 'µm from −100.000 mm']);
    expect(axis(1234.5671, 1234.5675, 2e-4, 's')).toEqual(['200 400', 'µs from 1234.567000 s']);
  });

  it('print more decimals on demand, a true minus, and a dash for nothing', () => {
    const labels = labelling(-1e-6, 1e-6, 5e-7, 'mm');
    expect(labelText(-2.345e-7, labels, 1)).toBe('−0.23');
    expect(labelText(-1e-12, labels)).toBe('0.0');
    expect(labelText(Number.NaN, labels)).toBe('–');
  });
});

describe('reading of a column', () => {
  const µm = labelling(-3e-6, 3e-6, 1e-6, 'mm');

  it('has the digits that the scale resolves, not one more than its ticks', () => {
    expect(readingText(1.23456e-6, 1.23456e-6, µm, 5e-9)).toBe('1.235');
    expect(readingText(1.23456e-6, 1.23456e-6, µm, 0.08e-6)).toBe('1.2');
  });

  it('is a range as fine as a single value, where the range can be seen', () => {
    expect(readingText(-3.04e-6, -2.16e-6, µm, 0.02e-6)).toBe('−3.0…−2.2');
    expect(readingText(-2.17e-6, -2.16e-6, µm, 0.02e-6)).toMatch(/^−2\.1[67]$/);
  });

  it('is a dash where nothing was recorded', () => {
    expect(readingText(Number.NaN, Number.NaN, µm, 1e-8)).toBe('–');
  });
});

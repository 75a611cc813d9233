import { describe, expect, test } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { fixed, inUnit, ranged, shortest, toldApart } from '../../../shared/core/format.ts';
import { UNITS, type Unit } from '../../../shared/core/units.ts';

// Prefixes and their powers of ten: SI Brochure, 9th ed. 2019, table 7.
test('two numbers are told with as many digits as tell them apart', () => {
  expect(toldApart(257, 130, '°C')).toEqual(['257 °C', '130 °C']);
  expect(toldApart(130.1, 130, '°C')).toEqual(['130.1 °C', '130.0 °C']);
  expect(toldApart(1.50003, 1.5, 'm/s')).toEqual(['1.50003 m/s', '1.50000 m/s']);
});

describe('a number ranges itself', () => {
  test.each<[number, Unit, string]>([
    [12.3e-9, 'mm', '12.3 nm'],
    [3.4e-6, 'm', '3.40 µm'],
    [0.0123, 'nm', '12.3 mm'],
    [0.2, 'm', '0.200 m'],
    [1.5, 'mm', '1.50 m'],
    [0.002, 'm/s', '2.00 mm/s'],
    [1.25, 'mm/s', '1.25 m/s'],
    [125e-6, 's', '125 µs'],
    [0.0351, 's', '35.1 ms'],
    [61, 'ms', '61.0 s'],
    [0.4, 'N', '0.40 N'],
    [213, 'N', '213 N'],
    [1600, 'N', '1.60 kN'],
    [0.0071, 'A', '7.10 mA peak'],
    [325, 'V', '325 V'],
    [2400, 'W', '2.40 kW'],
    [0.012, 'J', '12.0 mJ'],
    [16000, 'Hz', '16.0 kHz'],
    [1.5e8, 'N/m', '150 N/µm'],
    [3e-4, 'kg·m²', '3.00 kg·cm²'],
    [0.25, 'kg', '250 g'],
    [98.6, '°C', '98.6 °C'],
    [0.0475, '%', '4.75 %'],
    [Math.PI / 2, '°', '90.0°'],
    [-0.0011, '1/K', '−0.00110 1/K'],
    [2.2e8, 'N/(m·s)', '2.20·10⁸ N/(m·s)'],
    [3e-13, '', '3.00·10⁻¹³'],
  ])('%d in %s reads %s', (value, unit, text) => {
    expect(ranged(value, unit)).toBe(text);
  });

  test('rounding carries into the next unit instead of showing 1000', () => {
    expect(ranged(999.6e-9, 'm')).toBe('1.00 µm');
    expect(ranged(0.09996, 'm')).toBe('0.100 m');
    expect(ranged(-999.96, 'N')).toBe('−1.00 kN');
  });

  test('the minus is U+2212, and a rounded zero has none', () => {
    expect(ranged(-3.4e-6, 'm')).toBe('\u22123.40 µm');
    expect(ranged(-1e-14, 'm')).toBe('0.00 nm');
    expect(ranged(-0, 'N')).toBe('0.00 N');
  });

  test('no unit ever prints NaN, infinity or a sign that is not ours', () => {
    for (const unit of Object.keys(UNITS) as Unit[]) {
      for (const bad of [Number.NaN, Infinity, -Infinity]) {
        expect(ranged(bad, unit)).toBe('—');
        expect(inUnit(bad, unit)).toBe('—');
        expect(fixed(bad, unit, 2)).toBe('—');
        expect(shortest(bad, unit)).toBe('—');
      }
      for (let power = -15; power <= 15; power += 0.37) {
        expect(ranged(-(10 ** power), unit)).not.toMatch(/NaN|Infinity|[-e+]\d/);
      }
    }
  });

  test('the text holds the value to the digits it shows', () => {
    const prefix: Record<string, number> = { nm: 1e-9, µm: 1e-6, mm: 1e-3, m: 1 };
    for (let power = -9; power < 0.5; power += 0.013) {
      const [number, unit] = ranged(10 ** power, 'm', 4).split(' ') as [string, string];
      expect(Math.abs((Number(number) * present(prefix[unit])) / 10 ** power - 1)).toBeLessThan(5.001e-4);
      expect(number.replace(/^0\./, '').replace('.', '')).toHaveLength(4);
    }
  });
});

test('a number keeps to its unit where it is told to', () => {
  expect(inUnit(0.2, 'mm', 4)).toBe('200.0 mm');
  expect(inUnit(-2.5e-6, 'mm')).toBe('−0.00250 mm');
  expect(fixed(-0.0123456, 'mm', 3)).toBe('−12.346 mm');
  expect(fixed(-1e-9, 'mm', 3)).toBe('0.000 mm');
});

test('a limit prints as short as it is', () => {
  expect(shortest(0.2, 'mm')).toBe('200 mm');
  expect(shortest(1e-3, 'm/s²')).toBe('0.001 m/s²');
  expect(shortest(-5000, 'N')).toBe('−5000 N');
  expect(shortest(1e9, 'N/m')).toBe('1·10⁹ N/m');
  expect(shortest(30e-6, 'µm/(m·K)')).toBe('30 µm/(m·K)');
  expect(shortest(0, 'N')).toBe('0 N');
});

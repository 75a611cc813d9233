import { describe, expect, it } from 'vitest';
import { UNITS, type Unit } from '../../shared/units.ts';
import { readTyped } from '../../src/panel/typedQuantity.ts';
import { unitMeaning } from '../../src/panel/unitExpression.ts';

// Expected values: definitions of prefixes and derived units, SI Brochure, 9th ed. 2019, tables 4 and 7.
describe('typed quantities', () => {
  it.each([
    ['5 um', 'mm', 5e-6],
    ['5 µm', 'nm', 5e-6],
    ['5 μm', 'nm', 5e-6],
    ['0.2m', 'mm', 0.2],
    ['200', 'mm', 0.2],
    ['3e3', 'N/m', 3000],
    ['-1.5e-2 mm', 'mm', -1.5e-5],
    ['.5', 's', 0.5],
    ['2.8 MN/m', 'N/m', 2.8e6],
    ['30 N/um', 'N/m', 3e7],
    ['10 m/s^2', 'm/s²', 10],
    ['10 m/s2', 'm/s²', 10],
    ['16 kHz', 'Hz', 16000],
    ['100 us', 'ms', 1e-4],
    ['3 kg*cm2', 'kg·cm²', 3e-4],
    ['3e-4 kg m^2', 'kg·cm²', 3e-4],
    ['7 N s/m', 'N·s/m', 7],
    ['6 mH', 'mH', 6e-3],
    ['5000 mohm', 'Ω', 5],
    ['90 deg', '°', Math.PI / 2],
    ['1 rad', '°', 1],
    ['5 %', '%', 0.05],
    ['0.05 1', '%', 0.05],
    ['110 °C', '°C', 110],
    ['2 min', 's', 120],
    ['off', 'N/m', 0],
  ] as [string, Unit, number][])('%s in a field of %s', (text, unit, value) => {
    const typed = readTyped(text, unit);
    expect('value' in typed && typed.value).toBeCloseTo(value, 12);
  });

  it.each([
    ['', 'mm', 'not a number'],
    ['abc', 'mm', 'not a number'],
    ['5 5', 'mm', 'not a unit'],
    ['5 s', 'mm', 'does not fit'],
    ['5 K', '°C', 'does not fit'],
    ['5 furlong', 'mm', 'not a unit'],
    ['0,2', 'm', 'point, not a comma'],
    ['5 (m', 'mm', 'not a unit'],
    ['5 constructor', 'mm', 'not a unit'],
    ['NaN', 'mm', 'not a number'],
    ['Infinity', 'mm', 'not a number'],
  ] as [string, Unit, string][])('%s in a field of %s is refused', (text, unit, why) => {
    const typed = readTyped(text, unit);
    expect('problem' in typed && typed.problem).toContain(why);
  });

  it.each(Object.entries(UNITS))(
    'the unit %s of the table means what its factor says',
    (unit, { factor }) => {
      const meaning = unitMeaning(unit)!;
      expect(meaning.factor / factor).toBeCloseTo(1, 12);
    },
  );
});

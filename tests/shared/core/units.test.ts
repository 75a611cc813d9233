import { describe, expect, test } from 'vitest';
import { fromSI, toSI, UNITS, type Unit, unitIn } from '../../../shared/core/units.ts';

// NIST SP 811, 2008, app. B.8: inch, pound (avoirdupois) and pound-force by definition; degree Fahrenheit, app. B.8 and B.9.
describe('inches, pounds and degrees Fahrenheit', () => {
  test.each<[number, Unit, number]>([
    [1, 'in', 25.4e-3],
    [1, 'µin', 25.4e-9],
    [12, 'in/s', 0.3048],
    [12, 'in/s²', 0.3048],
    [12, 'in/s³', 0.3048],
    [1, 'lb', 0.45359237],
    [1, 'lbf', 4.4482216152605],
    [32, '°F', 0],
    [212, '°F', 100],
    [-40, '°F', -40],
    [98.6, '°F', 37],
  ])('%d %s', (shown, unit, value) => {
    expect(toSI(shown, unit)).toBeCloseTo(value, 13);
    expect(fromSI(value, unit)).toBeCloseTo(shown, 12);
  });

  // SP 811, app. B.8, to the seven digits printed there.
  test.each<[Unit, number]>([
    ['lbf/in', 1.751268e2],
    ['in', 2.54e-2],
    ['lb', 4.535924e-1],
    ['lbf', 4.448222],
  ])('%s to seven digits', (unit, factor) => {
    expect(Number(UNITS[unit].factor.toPrecision(7))).toBe(factor);
  });
});

test('a unit of inches means the same kind of quantity, and electrical units stay', () => {
  expect(unitIn('metric', 'mm')).toBe('mm');
  expect(unitIn('inch', 'mm')).toBe('in');
  expect(unitIn('inch', 'µm')).toBe('µin');
  expect(unitIn('inch', '°C')).toBe('°F');
  for (const unit of ['V', 'A peak', 'Ω', 'mH', 'W', 's', 'ms', 'Hz', '%', '°', 'h', '1/kWh'] as const)
    expect(unitIn('inch', unit)).toBe(unit);
});

test('every value reads back through its unit', () => {
  for (const unit of Object.keys(UNITS) as Unit[])
    for (const value of [0.37, 21, -3.5e-6]) expect(toSI(fromSI(value, unit), unit)).toBeCloseTo(value, 12);
});

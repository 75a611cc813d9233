import { afterEach, describe, expect, it } from 'vitest';
import { present } from '../../../../shared/core/at.ts';
import { setCurrentUnit } from '../../../../shared/core/currentUnit.ts';
import { PARAMETERS } from '../../../../shared/core/parameters/table.ts';
import { UNITS, type Unit } from '../../../../shared/core/units.ts';
import { readTyped } from '../../../../src/ui/fields/typedQuantity.ts';
import { unitMeaning } from '../../../../src/ui/fields/unitExpression.ts';

// Expected values: definitions of prefixes and derived units, SI Brochure, 9th ed. 2019, tables 4 and 7; of inch, pound and degree
// Fahrenheit, NIST SP 811, 2008, app. B.8.
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
    ['5 lb', 'kg', 2.26796185],
    ['0.5 in', 'mm', 0.0127],
    ['0.5"', 'mm', 0.0127],
    ['40 uin', 'µm', 1.016e-6],
    ['10 lbf', 'N', 44.482216152605],
    ['2 in/s', 'mm/s', 0.0508],
    ['386 in/s^2', 'm/s²', 9.8044],
    ['1000 lbf/in', 'N/µm', (1000 * 4.4482216152605) / 0.0254],
    ['10 mm', 'in', 0.01],
    ['70', '°F', 190 / 9],
    ['70 °F', '°C', 190 / 9],
    ['-40 degF', '°C', -40],
    ['100 °C', '°F', 100],
    ['8 h', 's', 28800],
    ['0.3 1/kWh', '1/kWh', 0.3 / 3.6e6],
  ] as [string, Unit, number][])('%s in a field of %s', (text, unit, value) => {
    const typed = readTyped(text, { unit });
    expect('value' in typed && typed.value).toBeCloseTo(value, 12);
  });

  it.each([
    ['', 'mm', 'Nothing is entered'],
    ['abc', 'mm', 'not a number'],
    ['5 5', 'mm', 'not a known unit'],
    ['5 s', 'mm', 'does not fit'],
    ['5 K', '°C', 'does not fit'],
    ['5 furlong', 'mm', 'not a known unit'],
    ['0,2', 'm', 'point, not a comma'],
    ['5 (m', 'mm', 'not a known unit'],
    ['5 lbf', 'kg', 'does not fit'],
    ['5 °F/s', '°C', 'not a known unit'],
    ['5 m°F', '°C', 'not a known unit'],
    ['5 °F²', '°C', 'not a known unit'],
    ['5 constructor', 'mm', 'not a known unit'],
    ['NaN', 'mm', 'not a number'],
    ['Infinity', 'mm', 'not a number'],
  ] as [string, Unit, string][])('%s in a field of %s is refused', (text, unit, why) => {
    const typed = readTyped(text, { unit });
    expect('problem' in typed && typed.problem).toContain(why);
  });

  // A sine: peak = √2 RMS. Wye connection: from line to line twice the resistance and inductance and √3 of the voltage of a phase.
  it.each([
    ['71', 'forceConstant', 71],
    ['71 N/Arms', 'forceConstant', 71],
    ['71 N/A', 'forceConstant', 71],
    ['71 N/A rms', 'forceConstant', 71],
    ['71 N/Aeff', 'forceConstant', 71],
    ['50.2 N/Apk', 'forceConstant', 50.2 * Math.SQRT2],
    ['50.2 N/A_peak', 'forceConstant', 50.2 * Math.SQRT2],
    ['16 lbf/Arms', 'forceConstant', 16 * 4.4482216152605],
    ['0.9 Nm/Apk', 'torqueConstant', 0.9 * Math.SQRT2],
    ['4.1 Arms', 'continuousCurrent', 4.1 * Math.SQRT2],
    ['4.1 A rms', 'continuousCurrent', 4.1 * Math.SQRT2],
    ['4100 mArms', 'continuousCurrent', 4.1 * Math.SQRT2],
    ['5.8 Apk', 'continuousCurrent', 5.8],
    ['5.8 A', 'continuousCurrent', 5.8],
    ['41 Vs/m', 'backEmfConstant', 41],
    ['41 V/(m/s)', 'backEmfConstant', 41],
    ['41 Vrms/(m/s)', 'backEmfConstant', 41],
    ['58 Vpk/(m/s)', 'backEmfConstant', 58 / Math.SQRT2],
    ['58 Vpeak/(m/s) l-l', 'backEmfConstant', 58 / Math.SQRT2],
    ['23.7 Vrms/(m/s) ph', 'backEmfConstant', 23.7 * Math.sqrt(3)],
    ['1.04 V/(in/s)', 'backEmfConstant', 1.04 / 0.0254],
    ['2.6 ohm', 'resistance', 2.6],
    ['1.3 ohm ph', 'resistance', 2.6],
    ['1.3 Ω per phase', 'resistance', 2.6],
    ['2.6 Ω (line to line)', 'resistance', 2.6],
    ['900 uH phase', 'inductance', 1.8e-3],
    ['1.8 mH', 'inductance', 1.8e-3],
    ['325 VDC', 'busVoltage', 325],
    ['325 V dc', 'busVoltage', 325],
    ['0.32 kgcm2', 'rotorInertia', 0.32e-4],
    ['1.2 K/W', null, 1.2],
    ['1.2 °C/W', null, 1.2],
  ] as [string, 'forceConstant' | null, number][])('%s in the field of %s', (text, name, value) => {
    const row = name === null ? ({ unit: 'K/W' } as const) : PARAMETERS[name];
    const typed = readTyped(text, row);
    expect('problem' in typed ? typed.problem : typed.value / value).toBeCloseTo(1, 12);
  });

  it.each([
    ['325 Vrms', 'busVoltage', 'a direct voltage'],
    ['4 ADC', 'continuousCurrent', 'not a direct quantity'],
    ['60 N ph', 'continuousForce', 'not a value of a winding'],
    ['60 Arms', 'forceConstant', 'does not fit'],
  ] as [string, 'forceConstant', string][])('%s in the field of %s is refused', (text, name, why) => {
    const typed = readTyped(text, PARAMETERS[name]);
    expect('problem' in typed && typed.problem).toContain(why);
  });

  it.each(Object.entries(UNITS))(
    'the unit %s of the table means what its factor says',
    (unit, scale: { factor: number; offset?: number }) => {
      const meaning = present(unitMeaning(unit));
      // The table counts a current by its amplitude.
      const amplitude = meaning.form?.rms === 1 ? Math.SQRT2 : 1;
      expect((amplitude * meaning.factor) / scale.factor).toBeCloseTo(1, 12);
      expect(meaning.offset).toBe(scale.offset);
    },
  );
});

describe('a field of a current', () => {
  afterEach(() => setCurrentUnit('A peak'));

  it('takes a bare number in the form that it shows, and any other as it says', () => {
    const read = (text: string) => readTyped(text, PARAMETERS.peakCurrent);
    expect(read('10')).toEqual({ value: 10 });
    setCurrentUnit('A RMS');
    expect(read('10')).toEqual({ value: 10 * Math.SQRT2 });
    expect(read('10 A')).toEqual({ value: 10 * Math.SQRT2 });
    expect(read('10 A RMS')).toEqual({ value: 10 * Math.SQRT2 });
    expect(read('10 Apk')).toEqual({ value: 10 });
    expect(read('500 mArms')).toEqual({ value: 0.5 * Math.SQRT2 });
  });
});

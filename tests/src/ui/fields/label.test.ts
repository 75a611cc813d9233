import { describe, expect, it } from 'vitest';
import { PARAMETER_NAMES, PARAMETERS, parameterRow } from '../../../../shared/core/parameters/table.ts';
import { UNITS, type Unit } from '../../../../shared/core/units.ts';
import { fieldText } from '../../../../src/ui/fields/fieldText.ts';
import { parameterLabel, rangeText, valueText } from '../../../../src/ui/fields/label.ts';
import { readTyped } from '../../../../src/ui/fields/typedQuantity.ts';

describe('labels', () => {
  it('are words, and no two are alike', () => {
    const labels = PARAMETER_NAMES.map(parameterLabel);
    expect(new Set(labels).size).toBe(labels.length);
    for (const label of labels) expect(label).toMatch(/^[A-Z](?:[a-z0-9 ]|-EMF|-back)+$/);
  });

  it.each([
    ['Kp', 'Position gain'],
    ['accelerationFeedforward', 'Acceleration feedforward'],
    ['cogging1Period', 'Cogging 1 period'],
    ['ripple12', 'Ripple 12'],
  ] as const)('%s is called %s', (name, label) => expect(parameterLabel(name)).toBe(label));

  it('say what a field may hold', () => {
    expect(rangeText(PARAMETERS.Kp)).toBe('From 100 to 1e9 N/m, or off.');
    expect(rangeText(PARAMETERS.stairCount)).toBe('Whole numbers from 1 to 100.');
    expect(rangeText(PARAMETERS.drive)).toBe('One of: on, off, shorted.');
  });

  it('write values with their unit', () => {
    expect(valueText(PARAMETERS.stroke, 0.2)).toBe('200 mm');
    expect(valueText(PARAMETERS.Ki, 0)).toBe('off');
    expect(valueText(PARAMETERS.observer, true)).toBe('on');
    expect(valueText(PARAMETERS.drive, 'shorted')).toBe('shorted');
  });
});

describe('the text of a field', () => {
  it.each([
    [2.8e6, 'N/m', '2.8e6'],
    [0.2, 'mm', '200'],
    [5e-9, 'nm', '5'],
    [1e-4, 'ms', '0.1'],
    [3e7, 'N/µm', '30'],
    [0.1 + 0.2, 'm', '0.3'],
    [-0.1, 'mm', '-100'],
    [2e-5, '', '2e-5'],
    [Math.PI / 2, '°', '90'],
  ] as [number, Unit, string][])('%d in %s', (value, unit, text) =>
    expect(fieldText(value, unit)).toBe(text),
  );

  it('can be typed in again, for every default of the table', () => {
    for (const name of PARAMETER_NAMES) {
      const row = parameterRow(name);
      if (row.kind !== 'number') continue;
      const typed = readTyped(fieldText(row.default, row.unit), row);
      expect('value' in typed ? typed.value : typed.problem, name).toBeCloseTo(row.default, 9);
      expect(UNITS[row.unit]).toBeDefined();
    }
  });
});

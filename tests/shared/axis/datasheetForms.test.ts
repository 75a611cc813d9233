import { describe, expect, it } from 'vitest';
import { DATASHEET_FORMS } from '../../../shared/axis/datasheetForms.ts';
import { motorConstants, windingToAmbientResistance } from '../../../shared/axis/motor.ts';
import { defaultParameters, PARAMETERS, type ParameterName } from '../../../shared/core/parameters/table.ts';
import { readTyped } from '../../../src/ui/fields/typedQuantity.ts';

const p = { ...defaultParameters(), resistance: 6, forceConstant: 60, windingLimit: 130, ambient: 22 };

function typed(name: ParameterName, text: string) {
  const row = PARAMETERS[name];
  if (row.kind !== 'number') throw new Error(name);
  return readTyped(text, row, { forms: DATASHEET_FORMS[name] ?? [], parameters: () => p });
}

function value(name: ParameterName, text: string): number {
  const read = typed(name, text);
  if ('problem' in read) throw new Error(read.problem);
  return read.value;
}

describe('a parameter by another quantity of the datasheet', () => {
  // K_m = F/√P with P = 3 I_rms² R of one phase: the definition of the motor constant, from memory.
  it('force constant by motor constant, and by back-EMF in either form', () => {
    const forceConstant = value('forceConstant', '20 N/√W');
    expect(motorConstants({ ...p, forceConstant }).motorConstant).toBeCloseTo(20, 12);
    // Power balance: 3 · (E_ll/√3) · I = F v.
    expect(value('forceConstant', '30 Vrms/(m/s)')).toBeCloseTo(30 * Math.sqrt(3), 12);
    expect(value('forceConstant', '40 N/Apk')).toBeCloseTo(40 * Math.SQRT2, 12);
    expect(value('forceConstant', '30 Vpk/(m/s)')).toBeCloseTo((30 * Math.sqrt(3)) / Math.SQRT2, 12);
  });

  it('inductance by the electrical time constant', () => {
    expect(value('inductance', '2 ms')).toBeCloseTo(0.012, 12);
  });

  it('continuous force by stall force, continuous current, copper loss and thermal resistance', () => {
    expect(value('continuousForce', '90 N stall')).toBeCloseTo(127.279, 3);
    expect(value('continuousForce', '3 Arms')).toBeCloseTo(180, 9);
    expect(value('continuousForce', '3 Apk')).toBeCloseTo(127.279, 3);
    const hot = 1 + 0.00393 * 110; // IEC 60028
    expect(value('continuousForce', '135 W')).toBeCloseTo(60 * Math.sqrt(135 / (3 * 3 * hot)), 9);
    expect(value('continuousForce', '0.8 K/W')).toBeCloseTo(60 * Math.sqrt(108 / 0.8 / (9 * hot)), 9);
  });

  it('conductance by resistance, of one part or in all', () => {
    expect(value('windingToCarrier', '0.25 K/W')).toBe(4);
    const carrierToAir = value('carrierToAir', '1.5 K/W total');
    expect(windingToAmbientResistance({ ...p, carrierToAir })).toBeCloseTo(1.5, 12);
  });

  it('heat capacity by the time constant with which the part cools', () => {
    expect(value('windingCapacity', '60 s')).toBe(60 * p.windingToCarrier);
    expect(value('screwCapacity', '10 min')).toBe(600 * p.screwToAir);
  });

  it('is said in words, and refused where nothing is left', () => {
    expect(typed('forceConstant', '20 N/√W')).toMatchObject({
      note: 'From the motor constant, 20 N/√W: with the winding resistance as it is set now.',
    });
    expect(typed('carrierToAir', '0.1 K/W total')).toHaveProperty(
      'problem',
      expect.stringContaining('contradicts'),
    );
    expect(typed('forceConstant', '20 N stall')).toHaveProperty('problem');
    expect(typed('peakCurrent', '20 K/W')).toHaveProperty('problem');
  });
});

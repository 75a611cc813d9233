import { afterEach, describe, expect, it } from 'vitest';
import { fixed, inUnit, ranged, shortest, unitFor } from '../../../shared/core/format.ts';
import { AS_WRITTEN, exactly, onPage, sentence, sentenceText } from '../../../shared/core/sentence.ts';
import { inSystem, setUnitSystem, unitSystem } from '../../../shared/core/unitSystem.ts';

afterEach(() => setUnitSystem('metric'));

// 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 lbf = 4.4482216 N: NIST SP 811, 2008, app. B.
describe('a text for readers of inches', () => {
  it.each([
    [() => ranged(0.0254, 'm'), '1.00 in'],
    [() => ranged(0.254, 'mm'), '10.0 in'],
    [() => inUnit(0.45359237, 'kg', 6), '1.00000 lb'],
    [() => inUnit(4.4482216, 'N', 6), '1.00000 lbf'],
    [() => ranged(4448.2216, 'N', 4), '1000 lbf'],
    [() => ranged(0.3048, 'm/s'), '12.0 in/s'],
    [() => fixed(20, '°C', 1), '68.0 °F'],
    [() => shortest(6.894757e9, 'kN/mm²', 6), '1000 ksi'],
  ])('is in inches and pounds by the factors of the handbook: %#', (text, expected) => {
    expect(inSystem('inch', text)).toBe(expected);
  });

  it('ranges from inches to millionths of an inch and their fractions', () => {
    setUnitSystem('inch');
    const lengths = [0.0254, 25.4e-6, 2.54e-6, 25.4e-9, 10e-9, 1e-9, 0.1e-9, -1e-14];
    expect(lengths.map((length) => ranged(length, 'm'))).toEqual([
      '1.00 in',
      '0.00100 in',
      '100 µin',
      '1.00 µin',
      '0.394 µin',
      '0.0394 µin',
      '0.0039 µin',
      '0.0000 µin',
    ]);
    expect(ranged(1e-9, 'm/s')).toBe('0.0394 µin/s');
    expect(unitFor(2.54e-6, 'mm').text).toBe('µin');
  });

  it('has electricity, time and ratios as everybody has', () => {
    setUnitSystem('inch');
    expect([ranged(12, 'V'), ranged(0.4, 's'), inUnit(0.5, '%'), ranged(3, 'W')]).toEqual([
      '12.0 V',
      '400 ms',
      '50.0 %',
      '3.00 W',
    ]);
  });

  it('stays in SI where a file is spoken of', () => {
    setUnitSystem('inch');
    const limit = sentence`At most ${exactly(0.254, 'mm')}.`;
    expect(sentenceText(limit, AS_WRITTEN)).toBe('At most 0.254 m.');
    expect(sentenceText(limit, onPage())).toBe('At most 10 in.');
  });

  it('ends with what it was made for, whatever happens there', () => {
    expect(inSystem('inch', unitSystem)).toBe('inch');
    expect(() =>
      inSystem('inch', () => {
        throw new Error('no text');
      }),
    ).toThrow('no text');
    expect(unitSystem()).toBe('metric');
  });
});

import { afterEach, describe, expect, it } from 'vitest';
import { setCurrentUnit } from '../../../shared/core/currentUnit.ts';
import { fixed, inUnit, ranged, shortest, unitFor } from '../../../shared/core/format.ts';
import { unitWithForm } from '../../../shared/core/parameters/row.ts';
import { PARAMETERS } from '../../../shared/core/parameters/table.ts';
import { AS_WRITTEN, exactly, onPage, sentence, sentenceText } from '../../../shared/core/sentence.ts';

afterEach(() => setCurrentUnit('A peak'));

describe('a current, which is an amplitude inside', () => {
  it('says that it is a peak value', () => {
    expect(ranged(14.142, 'A')).toBe('14.1 A peak');
    expect(ranged(0.02, 'A')).toBe('20.0 mA peak');
    expect(unitWithForm(PARAMETERS.peakCurrent)).toBe('A peak');
  });

  // The RMS value of a sine is its amplitude over √2: any textbook of alternating current, from memory.
  it('reads as RMS for whoever wants that, by 1/√2', () => {
    setCurrentUnit('A RMS');
    expect(ranged(14.142136, 'A', 4)).toBe('10.00 A RMS');
    expect(inUnit(14.142136, 'A', 4)).toBe('10.00 A RMS');
    expect(fixed(14.142136, 'A', 1)).toBe('10.0 A RMS');
    expect(shortest(14.142136, 'A', 4)).toBe('10 A RMS');
    expect(ranged(0.0141421, 'A')).toBe('10.0 mA RMS');
    expect(unitFor(0.01, 'A').text).toBe('mA RMS');
    expect(unitWithForm(PARAMETERS.peakCurrent)).toBe('A RMS');
    expect(unitWithForm(PARAMETERS.forceConstant)).toBe('N/A RMS');
  });

  it('stays a peak value where a file is spoken of', () => {
    setCurrentUnit('A RMS');
    const limit = sentence`At most ${exactly(10, 'A')}.`;
    expect(sentenceText(limit, AS_WRITTEN)).toBe('At most 10 A peak.');
    expect(sentenceText(limit, onPage('metric'))).toBe('At most 7.071067812 A RMS.');
  });
});

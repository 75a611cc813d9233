import { describe, expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { isInUse } from '../../../shared/axis/inUse.ts';
import { defaultParameters, PARAMETER_NAMES } from '../../../shared/core/parameters/table.ts';
import { matches } from '../../../src/tuning/fieldSearch.ts';
import { fileName } from '../../../src/ui/files.ts';

const found = (text: string) => PARAMETER_NAMES.filter((name) => matches(name, text));

describe('finding a parameter', () => {
  it.each([
    ['Kp', 'Kp'],
    ['k_vff', 'speedFeedforward'],
    ['kvff', 'speedFeedforward'],
    ['mass table', 'tableMass'],
    ['BACKLASH', 'backlash'],
    ['lost motion', 'backlash'],
    ['notch', 'filter1'],
    ['filter 1 freq', 'filter1Frequency'],
  ])('%s finds %s', (text, name) => expect(found(text)).toContain(name));

  it('finds nothing for what is not there', () => expect(found('flux capacitor')).toEqual([]));
});

describe('what is folded away', () => {
  const p = defaultParameters();

  it('is what has no say', () => {
    expect(isInUse('filter1Frequency', { ...p, filter1: 'off' })).toBe(false);
    expect(isInUse('filter1Frequency', { ...p, filter1: 'notch' })).toBe(true);
    expect(isInUse('filter1Rise', { ...p, filter1: 'notch' })).toBe(false);
    expect(isInUse('filter4B2', { ...p, filter4: 'coefficients' })).toBe(true);
    expect(isInUse('sineAmplitude', { ...p, program: 'shuttle' })).toBe(false);
    expect(isInUse('torqueConstant', { ...p, lead: 0 })).toBe(false);
    expect(isInUse('mode2Mass', { ...p, mode2: 'off' })).toBe(false);
    expect(isInUse('mode2Mass', { ...p, mode2: 'motor side' })).toBe(true);
    expect(isInUse('misalignment3', { ...p, motorCount: 2 })).toBe(false);
  });

  it('can always be reached by a parameter that is shown', () => {
    for (const name of [
      'filter1',
      'filter2',
      'filter3',
      'program',
      'process',
      'lead',
      'base',
      'mode1',
      'mode3',
    ] as const)
      for (const scene of SCENES) expect(isInUse(name, scene.parameters)).toBe(true);
  });
});

it.each([
  ['Mould shuttle, press to measuring station', 'mould-shuttle-press-to-measuring-station.scene.json'],
  ['Größe 3/4 µm', 'groe-34-m.scene.json'],
  ['../..', 'waybench.scene.json'],
])('the file of “%s” is called %s', (title, name) => expect(fileName(title, 'scene.json')).toBe(name));

import { describe, expect, it } from 'vitest';
import { KEYS, meaningOf, type Stroke } from '../../../src/ui/keys.ts';

const stroke = (key: string, held: Partial<Stroke> = {}): Stroke => ({
  key,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...held,
});

describe('keys', () => {
  it('have one meaning each, and each action one key', () => {
    expect(new Set(KEYS.map(({ keys }) => keys)).size).toBe(KEYS.length);
    expect(new Set(KEYS.map(({ action }) => action)).size).toBe(KEYS.length);
  });

  it.each([
    [' ', {}, 'runOrPause'],
    ['.', {}, 'tick'],
    ['m', {}, 'move'],
    ['M', { shiftKey: true }, 'move'],
    ['?', { shiftKey: true }, 'help'],
    ['/', {}, 'search'],
    ['=', {}, 'faster'],
    ['+', { shiftKey: true }, 'faster'],
    ['z', { ctrlKey: true }, 'undo'],
    ['z', { metaKey: true }, 'undo'],
    ['Z', { ctrlKey: true, shiftKey: true }, 'redo'],
    ['1', {}, 0],
    ['9', {}, 8],
    ['0', {}, 'realTime'],
    ['z', {}, 'pen'],
    ['j', {}, null],
    ['r', { ctrlKey: true }, null],
    ['r', { altKey: true }, null],
    ['Tab', {}, null],
    ['1 to 9', {}, null],
  ] as const)('%s with %o means %s', (key, held, meaning) => {
    expect(meaningOf(stroke(key, held))).toBe(meaning);
  });
});

import fc from 'fast-check';
import { at } from '../../shared/core/at.ts';
import { share } from '../shared/core/arbitraries.ts';

/** What people and programs leave in files. */
const NASTY = [
  'null',
  'true',
  '[]',
  '{}',
  '""',
  '"NaN"',
  '1e308',
  '-1e308',
  '1e999',
  '-0',
  '0x10',
  '"__proto__"',
  '"constructor"',
  '"\\u0000"',
  '"\\ud800"',
  '[[[[[[]]]]]]',
  '{"__proto__":{"polluted":1}}',
  ',',
  ':',
  '"',
  '\ufeff',
];

type Damage = (text: string) => string;

const cut: fc.Arbitrary<Damage> = fc.tuple(share, share).map(([from, length]) => (text) => {
  const start = Math.floor(from * text.length);
  return text.slice(0, start) + text.slice(start + Math.ceil(length * 40));
});

const doubled: fc.Arbitrary<Damage> = fc.tuple(share, share).map(([from, length]) => (text) => {
  const start = Math.floor(from * text.length);
  return text.slice(0, start) + text.slice(start, start + Math.ceil(length * 200)) + text.slice(start);
});

const ended: fc.Arbitrary<Damage> = share.map(
  (where) => (text) => text.slice(0, Math.floor(where * text.length)),
);

const inserted: fc.Arbitrary<Damage> = fc
  .tuple(share, fc.oneof(fc.constantFrom(...NASTY), fc.string({ unit: 'binary', maxLength: 8 })))
  .map(([where, piece]) => (text) => {
    const start = Math.floor(where * text.length);
    return text.slice(0, start) + piece + text.slice(start);
  });

/** One of the values that stand in the text becomes something else; what else is there stays legal. */
const replaced: fc.Arbitrary<Damage> = fc
  .tuple(share, fc.constantFrom(...NASTY))
  .map(([which, piece]) => (text) => {
    const values = [...text.matchAll(/-?\d[\d.e+-]*|"(?:[^"\\]|\\.)*"|true|false|null/g)];
    if (values.length === 0) return piece;
    const { index, 0: value } = at(values, Math.min(Math.floor(which * values.length), values.length - 1));
    return text.slice(0, index) + piece + text.slice(index + value.length);
  });

/** Legal text, damaged in one to three ways. */
export const damaged = (texts: readonly string[]): fc.Arbitrary<string> =>
  fc
    .tuple(
      fc.constantFrom(...texts),
      fc.array(fc.oneof(cut, doubled, ended, inserted, replaced), { minLength: 1, maxLength: 3 }),
    )
    .map(([text, damages]) => damages.reduce((left, damage) => damage(left), text));

import { ranged } from '../core/format.ts';
import type { Claim, Measure } from './lesson.ts';
import { measureLabel, measureText, measureUnit } from './measureText.ts';

/** Figures by the names of their measures, SI; null where there was none. Not in it: not measured yet. */
export type Measured = ReadonlyMap<string, number | null>;

/** Whether the figures bear a claim out; null where one of them has not been measured yet. */
export function claimHolds({ measure, is, times, than }: Claim, measured: Measured): boolean | null {
  const value = measured.get(measure);
  if (value === undefined) return null;
  if (is === 'none') return value === null;
  if (is === 'some') return value !== null;
  const other = typeof than === 'number' ? than : measured.get(than ?? '');
  if (other === undefined) return null;
  if (value === null || other === null) return false;
  return is === 'more than' ? value > times * other : value < times * other;
}

/** A claim with the figures in it: 'Following error, RMS: with iron 21.0 nm, ironless 9.82 nm. 2.14 times as much.' */
export function claimText(claim: Claim, measures: readonly Measure[], measured: Measured): string {
  const [one, other] = [claim.measure, claim.than].map((id) => measures.find((each) => each.id === id));
  if (!one) return '';
  const value = measured.get(one.id) ?? null;
  const first = `${measureLabel(one)}: ${measureText(one, value)}.`;
  if (typeof claim.than === 'number')
    return `${first} ${claim.is === 'more than' ? 'More' : 'Less'} than ${ranged(claim.times * claim.than, measureUnit(one))}.`;
  if (!other) return first;
  const before = measured.get(other.id) ?? null;
  const [name, otherName] = [one, other].map((each) => measureLabel({ ...each, of: '' }));
  const both =
    name === otherName && one.of && other.of
      ? `${name}: ${one.of} ${measureText(one, value)}, ${other.of} ${measureText(other, before)}.`
      : `${first} ${measureLabel(other)}: ${measureText(other, before)}.`;
  return [both, ratioText(value, before)].filter(Boolean).join(' ');
}

/** How many times as much, or what share. */
function ratioText(value: number | null, before: number | null): string {
  if (value === null || before === null || before === 0 || value === 0 || value * before < 0) return '';
  const ratio = value / before;
  return ratio >= 1 ? `${ranged(ratio, '')} times as much.` : `${ranged(ratio, '%', 2)} of it.`;
}

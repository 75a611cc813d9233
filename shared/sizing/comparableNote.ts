import { at, present } from '../core/at.ts';
import { inUnit, ranged } from '../core/format.ts';
import type { Unit } from '../core/units.ts';
import { candidateLetter } from '../study/candidate.ts';
import type { Job } from '../study/job.ts';
import { COMPARABLE, isAlike, SCALED_BY, type SizedDrive, scaledConstants } from './comparable.ts';

/** In words, what the drives are alike in and what are not, and what follows from the choice of measure. */
export function comparableNote({ values }: Job, drives: readonly SizedDrive[]): string {
  if (drives.length < 2) return '';
  return `${alikeIn(values.comparableBy, drives)} Payload and job are the same for all.`;
}

/** 'Alike in continuous force: 300 N.' */
export function alikeIn(by: keyof typeof COMPARABLE, drives: readonly SizedDrive[]): string {
  const { label, unit, of } = COMPARABLE[by];
  const known = drives.flatMap((drive, place) => {
    const value = of(drive);
    return value === null ? [] : { letter: candidateLetter(place), value };
  });
  const without = drives.flatMap((drive, place) => (of(drive) === null ? candidateLetter(place) : []));
  const aside = without.length === 0 ? '' : ` ${without.join(', ')}: does not apply to a screw.`;
  if (known.length === 0) return `None of the drives has a figure for the ${label}.${aside}`;
  const sorted = known.map(({ value }) => value).sort((a, b) => a - b);
  const middle = at(sorted, Math.floor((sorted.length - 1) / 2));
  const alike = known.filter(({ value }) => isAlike(value, middle));
  const odd = known.filter(({ value }) => !isAlike(value, middle));
  const common = span(
    alike.map(({ value }) => value),
    unit,
  );
  if (odd.length === 0) return `Alike in ${label}: ${common}.${aside}`;
  const others = odd.map(({ letter, value }) => `${letter} ${shown(value, unit)}, ${times(value / middle)}`);
  return `Not alike in ${label}: ${alike.map(({ letter }) => letter).join(', ')} ${common}; ${others.join('; ')}.${aside}`;
}

/** K_m² of one linear motor over that of another, in the order of SCALED_BY. */
export interface ConstantRatios {
  readonly letter: string;
  readonly against: string;
  readonly ratios: readonly number[];
}

/** What the measure does to the comparison: the first linear motor against each other one. */
export function constantRatios(drives: readonly SizedDrive[]): ConstantRatios[] {
  const linear = drives.flatMap((drive, place) =>
    drive.scene.parameters.lead > 0 ? [] : { drive, letter: candidateLetter(place) },
  );
  const [first, ...others] = linear;
  if (!first) return [];
  return others.map(({ drive, letter }) => ({
    letter: first.letter,
    against: letter,
    ratios: SCALED_BY.map((by) => present(scaledConstants(first.drive, drive, by))),
  }));
}

function span(values: readonly number[], unit: Unit): string {
  const [min, max] = [shown(Math.min(...values), unit), shown(Math.max(...values), unit)];
  return min === max ? min : `${min} to ${max}`;
}

function shown(value: number, unit: Unit): string {
  return unit === '%' || unit === 'K' ? inUnit(value, unit) : ranged(value, unit);
}

function times(factor: number): string {
  return `${inUnit(factor, '', 2)} times`;
}

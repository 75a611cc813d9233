import { inUnit, ranged, shortest } from './format.ts';
import type { NumberRow } from './parameters/row.ts';
import { inSystem, type UnitSystem, unitSystem } from './unitSystem.ts';
import { fromSI, siUnit, toSI, type Unit, unitIn } from './units.ts';

/**
 * A sentence whose names and values are still data; it is worded in the names and units of the reader where it is shown.
 * Plain data, so it may cross from a worker to the page.
 */
export type Sentence = readonly Part[];

type Part = string | Name | Quantity;

/** A quantity by name: as files and the command line write it, and as the page calls it. */
export interface Name {
  readonly name: string;
  readonly label: string;
}

/** An SI value, the unit in which a table states it, and how it is written. */
export interface Quantity {
  readonly value: number;
  readonly unit: Unit;
  readonly digits?: number;
  readonly style: 'exact' | 'padded' | 'ranged' | 'lower limit' | 'upper limit';
}

/** In whose names and units a sentence is written. */
export interface Wording {
  readonly names: keyof Name;
  readonly units: 'SI' | UnitSystem;
}

/** For people who edit a file, follow a link or type a command: names as they are written there, and SI. */
export const AS_WRITTEN: Wording = { names: 'name', units: 'SI' };

/** For readers of the page, where quantities go by their labels. */
export function onPage(units: UnitSystem = unitSystem()): Wording {
  return { names: 'label', units };
}

/** Template tag: sentence`${name} must be less than ${limit}.` A line break in the source is a space. */
export function sentence(texts: TemplateStringsArray, ...parts: readonly (Part | Sentence)[]): Sentence {
  return texts.flatMap((text, index) => {
    const part = parts[index] ?? [];
    const inOneLine = text.replace(/\s*\n\s*/g, ' ');
    return [inOneLine, ...(isSentence(part) ? part : [part])].filter((each) => each !== '');
  });
}

/** A value with every digit it has, up to ten. */
export function exactly(value: number, unit: Unit, digits = 10): Quantity {
  return { value, unit, digits, style: 'exact' };
}

/** A value that was worked out, to so many digits. */
export function approx(value: number, unit: Unit, digits = 3): Quantity {
  return { value, unit, digits, style: 'padded' };
}

/** The same in whichever unit of its family suits its size. */
export function approxRanged(value: number, unit: Unit, digits = 3): Quantity {
  return { value, unit, digits, style: 'ranged' };
}

export function lowerLimit({ min, unit }: NumberRow): Quantity {
  return { value: min, unit, style: 'lower limit' };
}

export function upperLimit({ max, unit }: NumberRow): Quantity {
  return { value: max, unit, style: 'upper limit' };
}

export function sentenceText(sentence: Sentence, wording: Wording): string {
  return sentence.map((part) => partText(part, wording)).join('');
}

function partText(part: Part, { names, units }: Wording): string {
  if (typeof part === 'string') return part;
  if ('name' in part) return names === 'label' ? `“${part.label}”` : part.name;
  if (units === 'SI') return inSystem('metric', () => quantityText(part, writtenUnit(part.unit)));
  return inSystem(units, () => quantityText(part, unitIn(units, part.unit)));
}

/** In a file a current is an amplitude, whatever the page shows. */
function writtenUnit(unit: Unit): Unit {
  const si = siUnit(unit);
  return si === 'A' ? 'A peak' : si;
}

function quantityText({ value, digits, style }: Quantity, unit: Unit): string {
  switch (style) {
    case 'exact':
      return shortest(value, unit, digits);
    case 'padded':
      return inUnit(value, unit, digits);
    case 'ranged':
      return ranged(value, unit, digits);
    case 'lower limit':
      return shortest(roundedLimit(value, unit, Math.ceil), unit);
    case 'upper limit':
      return shortest(roundedLimit(value, unit, Math.floor), unit);
  }
}

/** A limit that is no short number in the unit shown is rounded to the legal side. */
const LIMIT_DIGITS = 4;

function roundedLimit(limit: number, unit: Unit, round: (value: number) => number): number {
  const value = fromSI(limit, unit);
  const step = 10 ** (Math.floor(Math.log10(Math.abs(value))) + 1 - LIMIT_DIGITS);
  const whole = value / step;
  const isShort = value === 0 || Math.abs(whole - Math.round(whole)) < 1e-6;
  return isShort ? limit : toSI(round(whole) * step, unit);
}

function isSentence(part: Part | Sentence): part is Sentence {
  return Array.isArray(part);
}

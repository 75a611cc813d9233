import { at } from './at.ts';
import { inSystem } from './unitSystem.ts';
import { fromSI, printedUnit, UNITS, type Unit } from './units.ts';

/** A unit to print in: its text, its size in SI, and the SI magnitude from which it is used. */
type Step = readonly [text: string, factor: number, from: number];

const METRES: readonly Step[] = [
  ['m', 1, 0.1],
  ['mm', 1e-3, 1e-3],
  ['µm', 1e-6, 1e-6],
  ['nm', 1e-9, 0],
];
const METRES_PER_SECOND: readonly Step[] = METRES.map(([text, ...step]) => [`${text}/s`, ...step]);
const MICROINCH = 25.4e-9;
const INCHES: readonly Step[] = [
  ['in', 0.0254, 25.4e-6],
  ['µin', MICROINCH, 0],
];
const INCHES_PER_SECOND: readonly Step[] = INCHES.map(([text, ...step]) => [`${text}/s`, ...step]);
const SECONDS: readonly Step[] = [
  ['s', 1, 1],
  ['ms', 1e-3, 1e-3],
  ['µs', 1e-6, 0],
];
const HERTZ: readonly Step[] = [
  ['kHz', 1e3, 1e3],
  ['Hz', 1, 0],
];
const KILOGRAMS: readonly Step[] = [
  ['kg', 1, 1],
  ['g', 1e-3, 0],
];
const INERTIA: readonly Step[] = [['kg·cm²', 1e-4, 0]];
const NEWTONS: readonly Step[] = [
  ['kN', 1e3, 1e3],
  ['N', 1, 0],
];
const STIFFNESS: readonly Step[] = [
  ['N/µm', 1e6, 1e6],
  ['N/mm', 1e3, 1e3],
  ['N/m', 1, 0],
];
const withMilli = (unit: string): readonly Step[] => [
  [unit, 1, 1],
  [`m${unit}`, 1e-3, 0],
];
const amperes = (form: string, factor: number): readonly Step[] => [
  [`A ${form}`, factor, factor],
  [`mA ${form}`, 1e-3 * factor, 0],
];
const withKiloAndMilli = (unit: string): readonly Step[] => [[`k${unit}`, 1e3, 1e3], ...withMilli(unit)];

/** The units that range themselves, largest step first; every other unit prints as it is. */
const FAMILIES: Partial<Record<Unit, readonly Step[]>> = {
  m: METRES,
  mm: METRES,
  µm: METRES,
  nm: METRES,
  in: INCHES,
  µin: INCHES,
  'm/s': METRES_PER_SECOND,
  'mm/s': METRES_PER_SECOND,
  'in/s': INCHES_PER_SECOND,
  s: SECONDS,
  ms: SECONDS,
  µs: SECONDS,
  Hz: HERTZ,
  kHz: HERTZ,
  kg: KILOGRAMS,
  'kg·m²': INERTIA,
  'kg·cm²': INERTIA,
  N: NEWTONS,
  kN: NEWTONS,
  'N/m': STIFFNESS,
  'N/µm': STIFFNESS,
  'A peak': amperes('peak', 1),
  'A RMS': amperes('RMS', Math.SQRT2),
  V: withMilli('V'),
  W: withKiloAndMilli('W'),
  J: withKiloAndMilli('J'),
};

const NOT_A_NUMBER = '—';
const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/**
 * Text of an SI value in whichever unit of its family suits its size: '12.3 nm', '3.40 µm', '0.200 m'. `unit` names the
 * family. Always `digits` significant digits, so the width does not jitter; below the smallest unit of the family the
 * number of decimals is held instead ('0.03 nm', and as fine in fractions of a microinch: '0.0012 µin'). NaN and infinity print as a dash.
 */
export function ranged(value: number, unit: Unit, digits = 3): string {
  if (!Number.isFinite(value)) return NOT_A_NUMBER;
  const steps = FAMILIES[printedUnit(unit)];
  if (!steps) return inUnit(value, unit, digits);
  const size = Math.abs(roundTo(value, digits));
  const [text, factor] = steps.find(([, , from]) => size >= from) as Step;
  const shown = value / factor;
  // A microinch is some 25 nm: two decimals more are as fine.
  const finer = factor === MICROINCH ? 2 : 0;
  const smallest = factor === at(steps, steps.length - 1)[1] && Math.abs(shown) < (finer ? 0.1 : 1);
  return `${minus(smallest ? shown.toFixed(digits - 1 + finer) : significant(shown, digits))} ${text}`;
}

/** Text and SI size of the unit in which `ranged` prints a value of this size. */
export function unitFor(size: number, unit: Unit): { readonly text: string; readonly factor: number } {
  const step = FAMILIES[printedUnit(unit)]?.find(([, , from]) => Math.abs(size) >= from);
  const own = printedUnit(unit);
  return step ? { text: step[0], factor: step[1] } : { text: own, factor: UNITS[own].factor };
}

/** Two SI values with as many digits, three or more, as it takes to tell them apart: ['130.1 °C', '130.0 °C']. */
export function toldApart(one: number, other: number, unit: Unit): readonly [string, string] {
  let digits = 3;
  while (digits < 7 && ranged(one, unit, digits) === ranged(other, unit, digits)) digits++;
  return [ranged(one, unit, digits), ranged(other, unit, digits)];
}

/** Whether two SI values are one to a reader. By metric digits, so that it does not hang on the units somebody reads in. */
export function readAlike(one: number, other: number, unit: Unit): boolean {
  return inSystem('metric', () => ranged(one, unit) === ranged(other, unit));
}

/** Text of an SI value in exactly this unit, with `digits` significant digits: inUnit(0.2, 'mm', 4) is '200.0 mm'. */
export function inUnit(value: number, unit: Unit, digits = 3): string {
  return fixedText(value, unit, (shown) => significant(shown, digits));
}

/** Text of an SI value in exactly this unit, with a held number of decimals: for a readout that runs through zero. */
export function fixed(value: number, unit: Unit, decimals: number): string {
  return fixedText(value, unit, (shown) => shown.toFixed(decimals));
}

/** Text of an SI value in exactly this unit, as short as these digits allow: for limits, messages and what a person typed. */
export function shortest(value: number, unit: Unit, digits = 10): string {
  return fixedText(value, unit, (shown) => {
    const text = significant(shown, digits);
    return text.includes('.') ? text.replace(/\.?0+(?=·|$)/, '') : text;
  });
}

function fixedText(value: number, unit: Unit, numberText: (shown: number) => string): string {
  if (!Number.isFinite(value)) return NOT_A_NUMBER;
  const own = printedUnit(unit);
  return withUnit(numberText(fromSI(value, own)), own);
}

function roundTo(value: number, digits: number): number {
  return Number(value.toPrecision(digits));
}

/** Plain decimals from 0.0001 to below a million, a power of ten beyond. */
function significant(value: number, digits: number): string {
  const rounded = roundTo(value, digits);
  if (rounded === 0) return (0).toFixed(digits - 1);
  const [mantissa, power] = rounded.toExponential(digits - 1).split('e') as [string, string];
  const exponent = Number(power);
  if (exponent < -4 || exponent > 5) return `${mantissa}·10${superscript(exponent)}`;
  return rounded.toFixed(Math.max(0, digits - 1 - exponent));
}

function superscript(exponent: number): string {
  const digits = [...String(Math.abs(exponent))].map((digit) => SUPERSCRIPTS[Number(digit)]).join('');
  return exponent < 0 ? `⁻${digits}` : digits;
}

function withUnit(text: string, unit: Unit): string {
  return minus(text) + (unit === '' || unit === '°' ? unit : ` ${unit}`);
}

/** A whole number with a space between thousands: '6 550'. */
export function grouped(count: number): string {
  return count < 1000 ? String(count) : String(count).replace(/\B(?=(\d{3})+$)/g, '\u202f');
}

/** A price, or a number of times, for each of something: '8 per kWh' for '8 1/kWh'. */
export function asRate(text: string): string {
  return text.replace(' 1/', ' per ');
}

/** A true minus sign, and none before a zero. */
function minus(text: string): string {
  return /^-[0.]*$/.test(text) ? text.slice(1) : text.replace(/^-/, '−');
}

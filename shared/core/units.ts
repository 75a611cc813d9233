import { currentUnit } from './currentUnit.ts';
import { type UnitSystem, unitSystem } from './unitSystem.ts';

/**
 * Display units and how they relate to SI. Everything inside is SI; a number meets this table only where a
 * person or a document reads or writes it. `value_SI = shown * factor + offset`.
 */
export const UNITS = {
  '': { factor: 1 },
  '%': { factor: 0.01 },
  km: { factor: 1e3 },
  m: { factor: 1 },
  mm: { factor: 1e-3 },
  µm: { factor: 1e-6 },
  nm: { factor: 1e-9 },
  'nm/km': { factor: 1e-12 },
  s: { factor: 1 },
  ms: { factor: 1e-3 },
  µs: { factor: 1e-6 },
  min: { factor: 60 },
  h: { factor: 3600 },
  Hz: { factor: 1 },
  kHz: { factor: 1e3 },
  '1/s': { factor: 1 },
  '1/min': { factor: 1 / 60 },
  'm/s': { factor: 1 },
  'mm/s': { factor: 1e-3 },
  'm/s²': { factor: 1 },
  'm/s³': { factor: 1 },
  kg: { factor: 1 },
  'kg/m': { factor: 1 },
  'kg·m²': { factor: 1 },
  'kg·cm²': { factor: 1e-4 },
  N: { factor: 1 },
  kN: { factor: 1e3 },
  'N/m': { factor: 1 },
  'N/µm': { factor: 1e6 },
  'N·s/m': { factor: 1 },
  'N/(m·s)': { factor: 1 },
  'N/A': { factor: 1 },
  'N/√W': { factor: 1 },
  T: { factor: 1 },
  mT: { factor: 1e-3 },
  N·m: { factor: 1 },
  'N·m/A': { factor: 1 },
  Ω: { factor: 1 },
  H: { factor: 1 },
  F: { factor: 1 },
  mH: { factor: 1e-3 },
  mF: { factor: 1e-3 },
  A: { factor: 1 },
  // Inside, a current is the amplitude of a sine.
  'A peak': { factor: 1 },
  'A RMS': { factor: Math.SQRT2 },
  mA: { factor: 1e-3 },
  V: { factor: 1 },
  'V·s/m': { factor: 1 },
  W: { factor: 1 },
  J: { factor: 1 },
  kWh: { factor: 3.6e6 },
  '1/kWh': { factor: 1 / 3.6e6 },
  K: { factor: 1 },
  '°C': { factor: 1 },
  'mm/min': { factor: 1e-3 / 60 },
  'N²': { factor: 1 },
  'N²·s': { factor: 1 },
  'kN/mm²': { factor: 1e9 },
  'mm⁴': { factor: 1e-12 },
  'J/K': { factor: 1 },
  'W/K': { factor: 1 },
  'K/W': { factor: 1 },
  '1/K': { factor: 1 },
  'µm/(m·K)': { factor: 1e-6 },
  '√(s/m)': { factor: 1 },
  rad: { factor: 1 },
  '°': { factor: Math.PI / 180 },
  // By definition: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 lbf = 1 lb · 9.80665 m/s² (NIST SP 811, 2008, app. B).
  in: { factor: 0.0254 },
  µin: { factor: 25.4e-9 },
  'in/s': { factor: 0.0254 },
  'in/s²': { factor: 0.0254 },
  'in/s³': { factor: 0.0254 },
  lb: { factor: 0.45359237 },
  'lb/in': { factor: 0.45359237 / 0.0254 },
  lbf: { factor: 4.4482216152605 },
  'lbf/in': { factor: 4.4482216152605 / 0.0254 },
  'lbf·s/in': { factor: 4.4482216152605 / 0.0254 },
  'lbf/A': { factor: 4.4482216152605 },
  'V·s/in': { factor: 1 / 0.0254 },
  'lb·in²': { factor: 0.45359237 * 0.0254 ** 2 },
  'lbf/√W': { factor: 4.4482216152605 },
  lbf·in: { factor: 4.4482216152605 * 0.0254 },
  'lbf·in/A': { factor: 4.4482216152605 * 0.0254 },
  'lbf/(in·s)': { factor: 4.4482216152605 / 0.0254 },
  'µin/(in·K)': { factor: 1e-6 },
  '√(s/in)': { factor: 0.0254 ** -0.5 },
  'in/min': { factor: 0.0254 / 60 },
  'lbf²': { factor: 4.4482216152605 ** 2 },
  'lbf²·s': { factor: 4.4482216152605 ** 2 },
  ksi: { factor: (1e3 * 4.4482216152605) / 0.0254 ** 2 },
  'in⁴': { factor: 0.0254 ** 4 },
  '°F': { factor: 5 / 9, offset: -160 / 9 },
} as const satisfies Record<string, UnitScale>;

interface UnitScale {
  readonly factor: number;
  /** SI value of zero; temperatures are kept in °C. */
  readonly offset?: number;
}

export type Unit = keyof typeof UNITS;

/** A number in `unit`, from its SI value. */
export function fromSI(value: number, unit: Unit): number {
  const { factor, offset = 0 }: UnitScale = UNITS[unit];
  return (value - offset) / factor;
}

/** The SI value of `shown`, a number in `unit`. */
export function toSI(shown: number, unit: Unit): number {
  const { factor, offset = 0 }: UnitScale = UNITS[unit];
  return shown * factor + offset;
}

/**
 * What takes the place of a metric unit where people think in inches and pounds. A unit that is not listed stays: those of electricity,
 * energy and time, and K, so that formulas of heat are calculated in °C and K as motor datasheets are in either system. Names in a catalogue
 * stay as they are printed there.
 */
const INCH: Partial<Record<Unit, Unit>> = {
  m: 'in',
  mm: 'in',
  µm: 'µin',
  nm: 'µin',
  'm/s': 'in/s',
  'mm/s': 'in/s',
  'm/s²': 'in/s²',
  'm/s³': 'in/s³',
  kg: 'lb',
  'kg/m': 'lb/in',
  N: 'lbf',
  kN: 'lbf',
  'N/m': 'lbf/in',
  'N/µm': 'lbf/in',
  'N·s/m': 'lbf·s/in',
  'N/A': 'lbf/A',
  'N/√W': 'lbf/√W',
  'N/(m·s)': 'lbf/(in·s)',
  N·m: 'lbf·in',
  'N·m/A': 'lbf·in/A',
  'kg·m²': 'lb·in²',
  'kg·cm²': 'lb·in²',
  'mm/min': 'in/min',
  'N²': 'lbf²',
  'N²·s': 'lbf²·s',
  'kN/mm²': 'ksi',
  'mm⁴': 'in⁴',
  'µm/(m·K)': 'µin/(in·K)',
  '√(s/m)': '√(s/in)',
  'V·s/m': 'V·s/in',
  '°C': '°F',
};

/** The unit in which a person of this system reads and types what the tables state in `unit`. */
export function unitIn(system: UnitSystem, unit: Unit): Unit {
  if (unit === 'A') return currentUnit();
  return system === 'inch' ? (INCH[unit] ?? unit) : unit;
}

/** The unit in which the reader of the program has a value that is stated in `unit`. */
export function printedUnit(unit: Unit): Unit {
  return unitIn(unitSystem(), unit);
}

/** The SI unit that takes the place of another; one that is not listed is its own. Temperatures are kept in °C. */
const SI: Partial<Record<Unit, Unit>> = {
  '%': '',
  mm: 'm',
  µm: 'm',
  nm: 'm',
  in: 'm',
  µin: 'm',
  ms: 's',
  µs: 's',
  min: 's',
  h: 's',
  kHz: 'Hz',
  '1/min': '1/s',
  'mm/s': 'm/s',
  'in/s': 'm/s',
  'in/s²': 'm/s²',
  'in/s³': 'm/s³',
  lb: 'kg',
  'lb/in': 'kg/m',
  'kg·cm²': 'kg·m²',
  kN: 'N',
  lbf: 'N',
  'N/µm': 'N/m',
  'lbf/in': 'N/m',
  'lbf·s/in': 'N·s/m',
  'lbf/A': 'N/A',
  'lbf/√W': 'N/√W',
  'lbf/(in·s)': 'N/(m·s)',
  lbf·in: 'N·m',
  'lbf·in/A': 'N·m/A',
  'lb·in²': 'kg·m²',
  '√(s/in)': '√(s/m)',
  'µin/(in·K)': '1/K',
  mH: 'H',
  mF: 'F',
  'A peak': 'A',
  'A RMS': 'A',
  'V·s/in': 'V·s/m',
  kWh: 'J',
  'µm/(m·K)': '1/K',
  '°': 'rad',
  '°F': '°C',
};

/** The SI unit in which a value is kept that is shown in `unit`. */
export function siUnit(unit: Unit): Unit {
  return SI[unit] ?? unit;
}

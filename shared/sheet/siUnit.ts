import type { Unit } from '../core/units.ts';

/** The SI unit in which a value of the table is kept, by the unit in which it is shown. */
const SI: Partial<Record<Unit, string>> = {
  m: 'm',
  mm: 'm',
  µm: 'm',
  nm: 'm',
  ms: 's',
  µs: 's',
  min: 's',
  kHz: 'Hz',
  'mm/s': 'm/s',
  kN: 'N',
  'N/µm': 'N/m',
  '%': '',
  '°': 'rad',
  mH: 'H',
  'kg·cm²': 'kg·m²',
  'µm/(m·K)': '1/K',
};

export function siUnit(unit: Unit): string {
  return SI[unit] ?? unit;
}

/**
 * Display units and how they relate to SI. Everything inside is SI; a number meets this table only where a
 * person or a document reads or writes it. `value_SI = shown * factor + offset`.
 */
export const UNITS = {
  '': { factor: 1 },
  '%': { factor: 0.01 },
  m: { factor: 1 },
  mm: { factor: 1e-3 },
  µm: { factor: 1e-6 },
  nm: { factor: 1e-9 },
  s: { factor: 1 },
  ms: { factor: 1e-3 },
  µs: { factor: 1e-6 },
  min: { factor: 60 },
  h: { factor: 3600 },
  Hz: { factor: 1 },
  kHz: { factor: 1e3 },
  '1/s': { factor: 1 },
  'm/s': { factor: 1 },
  'mm/s': { factor: 1e-3 },
  'm/s²': { factor: 1 },
  'm/s³': { factor: 1 },
  kg: { factor: 1 },
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
  'N·m/A': { factor: 1 },
  Ω: { factor: 1 },
  mH: { factor: 1e-3 },
  A: { factor: 1 },
  V: { factor: 1 },
  'V·s/m': { factor: 1 },
  W: { factor: 1 },
  J: { factor: 1 },
  '1/kWh': { factor: 1 / 3.6e6 },
  K: { factor: 1 },
  '°C': { factor: 1 },
  'J/K': { factor: 1 },
  'W/K': { factor: 1 },
  'K/W': { factor: 1 },
  '1/K': { factor: 1 },
  'µm/(m·K)': { factor: 1e-6 },
  '√(s/m)': { factor: 1 },
  '°': { factor: Math.PI / 180 },
} as const satisfies Record<string, { factor: number }>;

export type Unit = keyof typeof UNITS;

/** A number in `unit`, from its SI value. */
export function fromSI(value: number, unit: Unit): number {
  return value / UNITS[unit].factor;
}

/** The SI value of `shown`, a number in `unit`. */
export function toSI(shown: number, unit: Unit): number {
  return shown * UNITS[unit].factor;
}

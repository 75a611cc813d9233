import { at } from '../../../shared/core/at.ts';

/**
 * Units as people type them, reduced to SI: `um`, `mm/s`, `N*s/m`, `N/(m·s)`, `kg cm2`.
 *
 *     product = factor (('·' | '*' | ' ' | '/') factor)*
 *     factor  = '√'? ('(' product ')' | [prefix] base) ('^'? integer | '²' | '³' | '⁴')?
 *
 * A division holds for the next factor alone, as in N·s/m. Sources: SI Brochure, 9th ed. 2019, tables 2, 4, 7 and 8; for inches and
 * pounds NIST SP 811, 2008, app. B.
 */
interface UnitMeaning {
  readonly factor: number;
  /** SI value of zero, for temperatures. */
  readonly offset?: number;
  /** Exponents of metre, kilogram, second, ampere, kelvin, degree Celsius. */
  readonly dimension: readonly number[];
  /** Exponents of amperes and volts that are said to be RMS, or peak values; of those that are said to be direct ones. */
  readonly form?: ElectricalForm;
}

/** How an expression says that its amperes and volts are meant. */
export interface ElectricalForm {
  readonly rms: number;
  readonly peak: number;
  readonly dc: number;
}

export const NO_FORM: ElectricalForm = { rms: 0, peak: 0, dc: 0 };

const NONE: readonly number[] = [0, 0, 0, 0, 0, 0];

/** A plain number. */
const ONE: UnitMeaning = { factor: 1, dimension: NONE };

const BASES = new Map<string, UnitMeaning>(
  Object.entries({
    '1': ONE,
    '%': { factor: 0.01, dimension: NONE },
    '°': { factor: Math.PI / 180, dimension: NONE },
    deg: { factor: Math.PI / 180, dimension: NONE },
    rad: { factor: 1, dimension: NONE },
    m: { factor: 1, dimension: [1, 0, 0, 0, 0, 0] },
    g: { factor: 1e-3, dimension: [0, 1, 0, 0, 0, 0] },
    s: { factor: 1, dimension: [0, 0, 1, 0, 0, 0] },
    min: { factor: 60, dimension: [0, 0, 1, 0, 0, 0] },
    h: { factor: 3600, dimension: [0, 0, 1, 0, 0, 0] },
    A: { factor: 1, dimension: [0, 0, 0, 1, 0, 0] },
    K: { factor: 1, dimension: [0, 0, 0, 0, 1, 0] },
    '°C': { factor: 1, dimension: [0, 0, 0, 0, 0, 1] },
    degC: { factor: 1, dimension: [0, 0, 0, 0, 0, 1] },
    '°F': { factor: 5 / 9, offset: -160 / 9, dimension: [0, 0, 0, 0, 0, 1] },
    degF: { factor: 5 / 9, offset: -160 / 9, dimension: [0, 0, 0, 0, 0, 1] },
    Hz: { factor: 1, dimension: [0, 0, -1, 0, 0, 0] },
    N: { factor: 1, dimension: [1, 1, -2, 0, 0, 0] },
    J: { factor: 1, dimension: [2, 1, -2, 0, 0, 0] },
    W: { factor: 1, dimension: [2, 1, -3, 0, 0, 0] },
    Wh: { factor: 3600, dimension: [2, 1, -2, 0, 0, 0] },
    V: { factor: 1, dimension: [2, 1, -3, -1, 0, 0] },
    Ω: { factor: 1, dimension: [2, 1, -3, -2, 0, 0] },
    ohm: { factor: 1, dimension: [2, 1, -3, -2, 0, 0] },
    H: { factor: 1, dimension: [2, 1, -2, -2, 0, 0] },
    F: { factor: 1, dimension: [-2, -1, 4, 2, 0, 0] },
    T: { factor: 1, dimension: [0, 1, -2, -1, 0, 0] },
    ohms: { factor: 1, dimension: [2, 1, -3, -2, 0, 0] },
    Ohm: { factor: 1, dimension: [2, 1, -3, -2, 0, 0] },
    Vs: { factor: 1, dimension: [2, 1, -2, -1, 0, 0] },
    Nm: { factor: 1, dimension: [2, 1, -2, 0, 0, 0] },
    Ns: { factor: 1, dimension: [1, 1, -1, 0, 0, 0] },
    rpm: { factor: 1 / 60, dimension: [0, 0, -1, 0, 0, 0] },
    sec: { factor: 1, dimension: [0, 0, 1, 0, 0, 0] },
    inch: { factor: 0.0254, dimension: [1, 0, 0, 0, 0, 0] },
    in: { factor: 0.0254, dimension: [1, 0, 0, 0, 0, 0] },
    '"': { factor: 0.0254, dimension: [1, 0, 0, 0, 0, 0] },
    lb: { factor: 0.45359237, dimension: [0, 1, 0, 0, 0, 0] },
    lbf: { factor: 4.4482216152605, dimension: [1, 1, -2, 0, 0, 0] },
    ksi: { factor: 4448.2216152605 / 0.0254 ** 2, dimension: [-1, 1, -2, 0, 0, 0] },
  }),
);

/** What follows A or V on datasheets, in English and German, and how the value is meant. */
const FORMS: readonly [form: keyof ElectricalForm, endings: readonly string[]][] = [
  ['rms', ['rms', 'RMS', 'eff']],
  ['peak', ['pk', 'peak', 'p', 'max']],
  ['dc', ['dc', 'DC']],
];
for (const [form, endings] of FORMS)
  for (const unit of ['A', 'V', 'Vs'])
    for (const ending of endings)
      BASES.set(`${unit}${ending}`, { ...(BASES.get(unit) ?? ONE), form: { ...NO_FORM, [form]: 1 } });

const PREFIXES = new Map<string, number>(
  Object.entries({
    G: 1e9,
    M: 1e6,
    k: 1e3,
    c: 1e-2,
    m: 1e-3,
    µ: 1e-6,
    u: 1e-6,
    n: 1e-9,
    p: 1e-12,
  }),
);

/** The meaning of a unit expression, or null when it is none. */
export function unitMeaning(text: string): UnitMeaning | null {
  // Greek mu and the ohm sign look like, but are not, the micro sign and Omega of the tables.
  const plain = spelled(text.trim().replaceAll('μ', 'µ').replaceAll('\u2126', 'Ω'));
  if (plain === '') return ONE;
  const tokens = plain.match(/[√()/·*²³⁴]|\^?-?\d+|[^\s√()/·*²³⁴^\d-]+|\S/g) ?? [];
  const reader = { tokens, at: 0 };
  const meaning = product(reader);
  return reader.at === tokens.length ? meaning : null;
}

/** Written apart on some datasheets and together on others: A rms, A_rms, kgcm². A degree in a quotient is a difference, a kelvin. */
function spelled(text: string): string {
  return text
    .replace(/(?<=[AVs])[\s_]+(?=(?:rms|eff|pk|peak|dc)\b)/gi, '')
    .replace(/(?<=\bk?g)(?=cm)/g, '·')
    .replace(/(?:°|deg)C(?=\s*\/)|(?<=\/\s*)(?:°|deg)C/g, 'K');
}

interface Reader {
  readonly tokens: readonly string[];
  at: number;
}

function product(reader: Reader): UnitMeaning | null {
  let result = factor(reader);
  while (result && reader.at < reader.tokens.length && reader.tokens[reader.at] !== ')') {
    const sign = reader.tokens[reader.at] === '/' ? -1 : 1;
    if (['/', '·', '*'].includes(reader.tokens[reader.at] ?? '')) reader.at++;
    const next = factor(reader);
    result = next && times(result, next, sign);
  }
  return result;
}

function factor(reader: Reader): UnitMeaning | null {
  const root = take(reader, '√') ? 0.5 : 1;
  const inner = take(reader, '(') ? inBrackets(reader) : atom(reader.tokens[reader.at++]);
  return inner && power(inner, root * exponent(reader));
}

function inBrackets(reader: Reader): UnitMeaning | null {
  const inner = product(reader);
  return take(reader, ')') ? inner : null;
}

function atom(word: string | undefined): UnitMeaning | null {
  if (word === undefined) return null;
  const whole = BASES.get(word);
  if (whole) return whole;
  const prefix = PREFIXES.get(word.slice(0, 1));
  const base = BASES.get(word.slice(1));
  // A unit whose zero is not zero takes no prefix.
  if (prefix === undefined || base?.offset !== undefined) return null;
  return base ? { ...base, factor: base.factor * prefix } : null;
}

function exponent(reader: Reader): number {
  const word = reader.tokens[reader.at] ?? '';
  const raised = ['²', '³', '⁴'].indexOf(word);
  const value = raised >= 0 ? raised + 2 : Number(word.replace(/^\^/, '') || Number.NaN);
  if (!Number.isInteger(value)) return 1;
  reader.at++;
  return value;
}

function take(reader: Reader, token: string): boolean {
  if (reader.tokens[reader.at] !== token) return false;
  reader.at++;
  return true;
}

/** a·b to the exponent. A unit whose zero is not zero has no products: 70 °F/s is no number of anything. */
function times(a: UnitMeaning, b: UnitMeaning, exponent: number): UnitMeaning | null {
  if (a.offset !== undefined || b.offset !== undefined) return null;
  return {
    factor: a.factor * b.factor ** exponent,
    dimension: a.dimension.map((d, i) => d + exponent * at(b.dimension, i)),
    ...formOf(a.form, b.form, exponent),
  };
}

function power(a: UnitMeaning, exponent: number): UnitMeaning | null {
  if (exponent === 1) return a;
  if (a.offset !== undefined) return null;
  return {
    factor: a.factor ** exponent,
    dimension: a.dimension.map((d) => d * exponent),
    ...formOf(undefined, a.form, exponent),
  };
}

function formOf(
  a: ElectricalForm = NO_FORM,
  b: ElectricalForm = NO_FORM,
  exponent: number,
): { form?: ElectricalForm } {
  const sum = (name: keyof ElectricalForm) => a[name] + exponent * b[name];
  const form = { rms: sum('rms'), peak: sum('peak'), dc: sum('dc') };
  return form.rms === 0 && form.peak === 0 && form.dc === 0 ? {} : { form };
}

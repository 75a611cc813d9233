import { filterCoefficients, staticGain } from '../axis/loop/filterSections.ts';
import { FILTER_NUMBERS, type FilterNumber } from '../core/parameters/filters.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { Basis } from './basis.ts';
import { numberText, quantityText } from './quantityText.ts';
import { type SheetRow, type SheetSection, setRow } from './row.ts';

type FilterType = Exclude<Parameters['filter1'], 'off'>;

const CENTRE_TEXT =
  'Other common forms: quality factor Q = 1/(2D), width 2 D f between the −3 dB points of a full notch, gain at the centre in dB 20 log d.';

/** The transfer function of each type. */
const TEXTS: Readonly<Record<FilterType, readonly string[]>> = {
  notch: [
    'N(s) = (s² + 2 d D ω s + ω²)/(s² + 2 D ω s + ω²), ω = 2π f. d is the gain at the centre, D the damping of the poles.',
    CENTRE_TEXT,
  ],
  peak: [
    'N(s) = (s² + 2 d D ω s + ω²)/(s² + 2 D ω s + ω²), ω = 2π f. d is the gain at the centre, above 1, D the damping of the poles.',
    CENTRE_TEXT,
  ],
  'low-pass': ['P(s) = ω²/(s² + 2 D ω s + ω²), ω = 2π f'],
  'lead-lag': [
    'H(s) = (1 + √r s/ω)/(1 + s/(√r ω)), ω = 2π f. Gain 1 far below, r far above, √r at f, where the phase is largest.',
  ],
  coefficients: ['Entered by its coefficients.'],
};

const DIGITAL_TEXT =
  'As a digital filter at the rate of the position loop: y = b0 x + b1 x₁ + b2 x₂ − a1 y₁ − a2 y₂ (index: samples ago). For a drive that adds the a-terms, change their sign.';

/** One section for each filter of the loop, with its coefficients if it is on. */
export function filterSections(p: Parameters, basis: Basis): SheetSection[] {
  return FILTER_NUMBERS.map((n) => section(p, n, basis));
}

function section(p: Parameters, n: FilterNumber, basis: Basis): SheetSection {
  const [id, type] = [`filter${n}`, p[`filter${n}`]];
  if (type === 'off') return { id, title: `Filter ${n}`, text: [], rows: [setRow(`Filter ${n}`, '', 'off')] };
  return {
    id,
    title: `Filter ${n}: ${type}`,
    text: [...TEXTS[type], DIGITAL_TEXT],
    rows: [setRow(`Filter ${n}`, '', type), ...shapeRows(p, n, type), ...digitalRows(p, n, type, basis)],
  };
}

function shapeRows(p: Parameters, n: FilterNumber, type: FilterType): SheetRow[] {
  const [frequency, damping] = [p[`filter${n}Frequency`], p[`filter${n}Damping`]];
  switch (type) {
    case 'coefficients':
      return [];
    case 'lead-lag':
      return [setRow('Centre', 'f', frequency, 'Hz'), setRow('Gain far above', 'r', p[`filter${n}Ratio`])];
    case 'low-pass':
      return [setRow('Corner', 'f', frequency, 'Hz'), ...dampingRows(damping)];
    default:
      return [
        setRow('Centre', 'f', frequency, 'Hz'),
        ...dampingRows(damping),
        ...centreRows(frequency, damping, gainAtCentre(p, n, type)),
      ];
  }
}

function gainAtCentre(p: Parameters, n: FilterNumber, type: 'notch' | 'peak'): number {
  return type === 'notch' ? p[`filter${n}Depth`] : p[`filter${n}Rise`];
}

function dampingRows(damping: number): SheetRow[] {
  const quality = 1 / (2 * damping);
  return [
    setRow('Damping', 'D', damping),
    {
      ...setRow('Quality factor', 'Q', quality),
      how: `Q = 1 / (2 · D) = 1 / (2 · ${numberText(damping)}) = ${numberText(quality)}`,
    },
  ];
}

function centreRows(frequency: number, damping: number, gain: number): SheetRow[] {
  const width = 2 * damping * frequency;
  const decibels = 20 * Math.log10(gain);
  return [
    {
      ...setRow('Width', '', width, 'Hz'),
      how: `width = 2 · D · f = 2 · ${numberText(damping)} · ${quantityText(frequency, 'Hz')} = ${quantityText(width, 'Hz')}`,
    },
    setRow('Gain at the centre', 'd', gain),
    {
      ...setRow('The same in decibels', '', decibels, 'dB'),
      how: `gain = 20 · log10(d) = 20 · log10(${numberText(gain)}) = ${numberText(decibels)} dB`,
    },
  ];
}

type Formulas = Readonly<Record<'a0' | 'b0' | 'b1' | 'b2' | 'a1' | 'a2', string>>;

/** How the coefficients of a type follow from c = 1/tan(π f/f_p), over a0. */
const NUMERATORS: Readonly<Record<Exclude<FilterType, 'coefficients'>, Formulas>> = {
  notch: { b0: 'c² + 2 d D c + 1', b1: '2 (1 − c²)', b2: 'c² − 2 d D c + 1', ...poles() },
  peak: { b0: 'c² + 2 d D c + 1', b1: '2 (1 − c²)', b2: 'c² − 2 d D c + 1', ...poles() },
  'low-pass': { b0: '1', b1: '2', b2: '1', ...poles() },
  'lead-lag': { a0: '1 + c / √r', b0: '1 + √r c', b1: '1 − √r c', b2: '0', a1: '1 − c / √r', a2: '0' },
};

function poles() {
  return { a0: 'c² + 2 D c + 1', a1: '2 (1 − c²)', a2: 'c² − 2 D c + 1' };
}

/** Coefficients, and how they follow from the frequency, which prewarping makes exact. */
function digitalRows(
  p: Parameters,
  n: FilterNumber,
  type: FilterType,
  { positionRate: rate }: Basis,
): SheetRow[] {
  const coefficients = filterCoefficients(p, n, rate.value);
  const names = ['b0', 'b1', 'b2', 'a1', 'a2'] as const;
  if (type === 'coefficients')
    return [
      ...names.map((name) => setRow('Coefficient', name, coefficients[name])),
      {
        ...setRow('Gain at standstill', '', staticGain(coefficients)),
        how: '(b0 + b1 + b2) / (1 + a1 + a2)',
      },
    ];
  const frequency = p[`filter${n}Frequency`];
  const c = 1 / Math.tan((Math.PI * frequency) / rate.value);
  const numerators = NUMERATORS[type];
  return [
    {
      ...setRow('Prewarping', 'c', c),
      how: `c = 1 / tan(π · f / f_p) = 1 / tan(π · ${quantityText(frequency, 'Hz')} / ${rate.text}) = ${numberText(c)}`,
    },
    { ...setRow('Common divisor', 'a0', commonDivisor(p, n, type, c)), how: `a0 = ${numerators.a0}` },
    ...names.map((name) => ({
      ...setRow('Coefficient', name, coefficients[name]),
      how: numerators[name] === '0' ? `${name} = 0` : `${name} = (${numerators[name]}) / a0`,
    })),
  ];
}

function commonDivisor(p: Parameters, n: FilterNumber, type: FilterType, c: number): number {
  if (type === 'lead-lag') return 1 + c / Math.sqrt(p[`filter${n}Ratio`]);
  return c * c + 2 * p[`filter${n}Damping`] * c + 1;
}

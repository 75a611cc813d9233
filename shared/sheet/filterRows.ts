import { type BiquadCoefficients, designLowpass, designNotch } from '../axis/biquadDesign.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { Basis } from './basis.ts';
import { onOff } from './gainRows.ts';
import { numberText, quantityText } from './quantityText.ts';
import { type SheetRow, type SheetSection, setRow } from './row.ts';

const NOTCH_TEXT = [
  'N(s) = (s² + 2 d D ω s + ω²)/(s² + 2 D ω s + ω²), ω = 2π f. d is the gain at the centre, D the damping of the poles.',
  'Other common forms: quality factor Q = 1/(2D), width 2 D f between the −3 dB points of a full notch, depth 20 log d.',
];
const LOWPASS_TEXT = ['P(s) = ω²/(s² + 2 D ω s + ω²), ω = 2π f'];
const DIGITAL_TEXT =
  'As a digital filter at the rate of the position loop: y = b0 x + b1 x₁ + b2 x₂ − a1 y₁ − a2 y₂ (index: samples ago). For a drive that adds the a-terms, change their sign.';

interface Filter {
  readonly on: boolean;
  readonly frequency: number;
  readonly damping: number;
  /** Null for the low-pass. */
  readonly depth: number | null;
}

/** One section for each filter of the loop, with its coefficients if it is on. */
export function filterSections(p: Parameters, basis: Basis): SheetSection[] {
  return [
    section('notch1', 'First notch', basis, {
      on: p.notch1,
      frequency: p.notch1Frequency,
      damping: p.notch1Width,
      depth: p.notch1Depth,
    }),
    section('notch2', 'Second notch', basis, {
      on: p.notch2,
      frequency: p.notch2Frequency,
      damping: p.notch2Width,
      depth: p.notch2Depth,
    }),
    section('lowpass', 'Low-pass', basis, {
      on: p.lowpass,
      frequency: p.lowpassFrequency,
      damping: p.lowpassDamping,
      depth: null,
    }),
  ];
}

function section(id: string, title: string, basis: Basis, filter: Filter): SheetSection {
  if (!filter.on) return { id, title, text: [], rows: [setRow(title, '', onOff(false))] };
  const label = filter.depth === null ? LOWPASS_TEXT : NOTCH_TEXT;
  return {
    id,
    title,
    text: [...label, DIGITAL_TEXT],
    rows: [setRow(title, '', onOff(true)), ...shapeRows(filter), ...digitalRows(filter, basis)],
  };
}

function shapeRows({ frequency, damping, depth }: Filter): SheetRow[] {
  const corner = setRow(depth === null ? 'Corner' : 'Centre', 'f', frequency, 'Hz');
  const rows = [corner, setRow('Damping', 'D', damping)];
  const quality = 1 / (2 * damping);
  const fromDamping = (name: string, numbers: string, text: string) => `${name} = ${numbers} = ${text}`;
  rows.push({
    ...setRow('Quality factor', 'Q', quality),
    how: fromDamping('Q = 1 / (2 · D)', `1 / (2 · ${numberText(damping)})`, numberText(quality)),
  });
  if (depth === null) return rows;
  const width = 2 * damping * frequency;
  const decibels = 20 * Math.log10(depth);
  return [
    ...rows,
    {
      ...setRow('Width', '', width, 'Hz'),
      how: fromDamping(
        'width = 2 · D · f',
        `2 · ${numberText(damping)} · ${quantityText(frequency, 'Hz')}`,
        quantityText(width, 'Hz'),
      ),
    },
    setRow('Gain at the centre', 'd', depth),
    {
      ...setRow('Depth', '', decibels, 'dB'),
      how: fromDamping(
        'depth = 20 · log10(d)',
        `20 · log10(${numberText(depth)})`,
        `${numberText(decibels)} dB`,
      ),
    },
  ];
}

/** Coefficients, and how they follow from the frequency, which prewarping makes exact. */
function digitalRows({ frequency, damping, depth }: Filter, { positionRate: rate }: Basis): SheetRow[] {
  const section: BiquadCoefficients = { b0: 1, b1: 0, b2: 0, a1: 0, a2: 0 };
  if (depth === null) designLowpass(section, frequency, damping, rate.value);
  else designNotch(section, frequency, damping, depth, rate.value);
  const c = 1 / Math.tan((Math.PI * frequency) / rate.value);
  const a0 = c * c + 2 * damping * c + 1;
  const row = (symbol: string, value: number, how: string): SheetRow => ({
    ...setRow('Coefficient', symbol, value),
    how,
  });
  const numbers = `${quantityText(frequency, 'Hz')} / ${rate.text}`;
  return [
    {
      ...setRow('Prewarping', 'c', c),
      how: `c = 1 / tan(π · f / f_p) = 1 / tan(π · ${numbers}) = ${numberText(c)}`,
    },
    { ...setRow('Common divisor', 'a0', a0), how: 'a0 = c² + 2 D c + 1' },
    row('b0', section.b0, depth === null ? 'b0 = 1 / a0' : 'b0 = (c² + 2 d D c + 1) / a0'),
    row('b1', section.b1, depth === null ? 'b1 = 2 / a0' : 'b1 = 2 (1 − c²) / a0'),
    row('b2', section.b2, depth === null ? 'b2 = 1 / a0' : 'b2 = (c² − 2 d D c + 1) / a0'),
    row('a1', section.a1, 'a1 = 2 (1 − c²) / a0'),
    row('a2', section.a2, 'a2 = (c² − 2 D c + 1) / a0'),
  ];
}

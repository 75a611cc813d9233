import { at, valueAt } from '../../../shared/core/at.ts';
import { type Failure, failure } from '../../../shared/core/problem.ts';
import type { MeasuredResponse, ResponseKind } from '../../../shared/protocol/response.ts';
import type { TraceTable } from '../trace/traceTable.ts';

/** How the two columns beside the frequency are meant. */
export const RESPONSE_FORMS = [
  'dB and degrees',
  'factor and degrees',
  'factor and radians',
  'real and imaginary part',
] as const;
export type ResponseForm = (typeof RESPONSE_FORMS)[number];

/** Which column holds what, counted from 0, and how it is meant. */
export interface ResponseMapping {
  readonly kind: ResponseKind;
  readonly form: ResponseForm;
  readonly frequency: number;
  /** Size and phase, or real and imaginary part. */
  readonly first: number;
  readonly second: number;
}

const FREQUENCY = /freq|frequenz|\bhz\b|^f\b/i;
const PHASE = /phase|\barg|deg|grad|winkel|\brad\b/i;
const IMAGINARY = /\bim(ag\w*)?\b|\bimaginär/i;
const REAL = /\bre(al\w*)?\b/i;
const SIZE = /mag|gain|ampl|betrag|\bdb\b|\|/i;
const KINDS: readonly [RegExp, ResponseKind][] = [
  [/sensitiv|empfindlich|^s\b/i, 'sensitivity'],
  [/plant|strecke|compliance|nachgieb/i, 'plant'],
];

/** What the titles of the columns suggest; a person may correct it. */
export function suggestResponse({ columns }: TraceTable): ResponseMapping {
  const names = columns.map(({ name }) => name);
  const find = (pattern: RegExp, otherwise: number) => {
    const found = names.findIndex((name) => pattern.test(name));
    return found < 0 ? Math.min(otherwise, names.length - 1) : found;
  };
  const isComplex = names.some((name) => IMAGINARY.test(name)) && names.some((name) => REAL.test(name));
  const frequency = find(FREQUENCY, 0);
  const first = isComplex ? find(REAL, 1) : find(SIZE, 1);
  const second = isComplex ? find(IMAGINARY, 2) : find(PHASE, 2);
  const [size = '', angle = ''] = [names[first], names[second]];
  const inRadians = /rad/i.test(angle) && !/grad/i.test(angle);
  const polar: ResponseForm = /db/i.test(size)
    ? 'dB and degrees'
    : inRadians
      ? 'factor and radians'
      : 'factor and degrees';
  const kind = KINDS.find(([pattern]) => pattern.test(size))?.[1] ?? 'open loop';
  return { kind, form: isComplex ? 'real and imaginary part' : polar, frequency, first, second };
}

/** The response that a table holds under a mapping, in the order of its frequencies. */
export function mapResponse({ columns }: TraceTable, mapping: ResponseMapping): MeasuredResponse | Failure {
  const picked = [mapping.frequency, mapping.first, mapping.second].map((index) => columns[index]);
  const [frequency, first, second] = picked;
  if (!frequency || !first || !second)
    return failure(
      '',
      columns.length,
      'A response needs three columns: frequency and two more. Choose them.',
    );
  for (const column of [frequency, first, second])
    if (column.bad)
      return failure(
        `line ${column.bad.line}, ${column.name}`,
        column.bad.text,
        `${column.bad.text} is not a number. Correct it, or leave the line out.`,
      );
  const rows = [...frequency.values.keys()]
    .filter((k) => [frequency, first, second].every(({ values }) => Number.isFinite(valueAt(values, k))))
    .sort((a, b) => valueAt(frequency.values, a) - valueAt(frequency.values, b));
  const points = rows.map((k) =>
    complexOf(mapping.form, valueAt(first.values, k), valueAt(second.values, k)),
  );
  return {
    kind: mapping.kind,
    frequency: Float64Array.from(rows, (k) => valueAt(frequency.values, k)),
    re: Float64Array.from(points, (point) => at(point, 0)),
    im: Float64Array.from(points, (point) => at(point, 1)),
  };
}

function complexOf(form: ResponseForm, first: number, second: number): readonly [re: number, im: number] {
  if (form === 'real and imaginary part') return [first, second];
  const size = form === 'dB and degrees' ? 10 ** (first / 20) : first;
  const angle = form === 'factor and radians' ? second : (Math.PI / 180) * second;
  return [size * Math.cos(angle), size * Math.sin(angle)];
}

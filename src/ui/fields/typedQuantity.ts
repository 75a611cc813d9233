import type { DatasheetForm } from '../../../shared/axis/datasheetForms.ts';
import { at } from '../../../shared/core/at.ts';
import type { NumberRow } from '../../../shared/core/parameters/row.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { printedUnit, toSI } from '../../../shared/core/units.ts';
import { type ElectricalForm, NO_FORM, unitMeaning } from './unitExpression.ts';

/** `note`: what was typed in place of the row's own quantity, and how the value follows from it. */
type Typed = { readonly value: number; readonly note?: string } | { readonly problem: string };

/** Other quantities that a datasheet may state, and the parameters in force that relate them to the row's. */
export interface OtherForms {
  readonly forms: readonly DatasheetForm[];
  parameters(): Parameters;
}

/** What of a row decides how a typed value is read. */
type TypedRow = Pick<NumberRow, 'unit' | 'form' | 'perPhase'>;

const NUMBER = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)(.*)$/i;
/** Says that another quantity of the same unit is meant. */
const WORD = /\s+(stall|total)$/i;
/** Says of a winding's value that it is that of one phase, or from line to line. */
const WINDING = /[\s,_(]+(?:(per phase|phase|ph)|(line[ -]to[ -]line|l-l|ll))\)?$/i;

/**
 * The SI value of what was typed into a field of a row: a bare number counts in its unit, and any unit of the same kind may follow it
 * ("5 um", "0.2m", "0.5 in", "70 °F", "3e3"). Amperes and volts may say RMS, peak or DC ("71 N/Apk"), a winding's values per phase or
 * line to line ("2.6 ohm ph"); what says nothing counts as the row has it. "off" is zero where zero is legal; the range is checked
 * elsewhere.
 */
export function readTyped(
  text: string,
  { unit: stated, form, perPhase }: TypedRow,
  others?: OtherForms,
): Typed {
  const unit = printedUnit(stated);
  const plain = text.trim().replaceAll('−', '-');
  if (/^(?:off|none|not asked|not required)$/i.test(plain)) return { value: 0 };
  const [, digits, rest = ''] = NUMBER.exec(plain) ?? [];
  const other = digits === undefined ? undefined : otherForm(Number(digits), rest, others);
  if (other) return other;
  const wanted = unit === '' ? 'a plain number' : `a number in ${unit}`;
  if (plain === '') return { problem: `Nothing is entered; type ${wanted}.` };
  if (digits === undefined) return { problem: `“${plain}” is not a number; type ${wanted}.` };
  if (rest.trim().startsWith(',')) return { problem: `“${plain}”: use a decimal point, not a comma.` };

  const [, phase, lineToLine] = WINDING.exec(rest) ?? [];
  const unitText = rest.replace(WINDING, '').trim();
  if ((phase || lineToLine) && perPhase === undefined)
    return {
      problem: `“${rest.trim()}” does not fit here: this is not a value of a winding; type ${wanted}.`,
    };
  const winding = phase ? (perPhase ?? 1) : 1;
  if (unitText === '' || unitText === unit) return { value: toSI(Number(digits), unit) * winding };

  const typed = unitMeaning(unitText);
  if (!typed) return { problem: `“${unitText}” is not a known unit; type ${wanted}.` };
  const own = unitMeaning(unit);
  if (!sameKind(typed, own)) return { problem: `“${unitText}” does not fit here; type ${wanted}.` };
  // What says nothing counts as the field has it.
  const converted = formFactor(typed.form ?? own.form ?? NO_FORM, form);
  if (converted === null)
    return { problem: `“${unitText}” does not fit here: ${FORM_TEXT[form ?? 'none']}; type ${wanted}.` };
  return { value: (Number(digits) * typed.factor + (typed.offset ?? 0)) * converted * winding };
}

/** The value by another quantity that the typed unit, with a word behind it, belongs to. */
function otherForm(digits: number, rest: string, others: OtherForms | undefined): Typed | undefined {
  const [, word] = WORD.exec(rest) ?? [];
  const typed = unitMeaning(rest.replace(WORD, '').trim());
  if (!others || !typed || rest.trim() === '') return undefined;
  const found = others.forms.find(
    ({ word: own, unit, written }) =>
      own === word?.toLowerCase() && (written?.test(rest) ?? true) && sameKind(typed, unitMeaning(unit)),
  );
  if (!found) return undefined;
  const converted = formFactor(typed.form ?? NO_FORM, found.form);
  if (converted === null) return undefined;
  const value = found.of(digits * typed.factor * converted, others.parameters());
  if (value > 0 && Number.isFinite(value))
    return { value, note: `From the ${found.name}, ${digits}${rest}: ${found.by}.` };
  return {
    problem: `The ${found.name}, ${digits}${rest}, contradicts the other values: ${found.by}, nothing is left.`,
  };
}

type Kind = NonNullable<ReturnType<typeof unitMeaning>>;

function sameKind(a: Kind, b: Kind | null): b is Kind {
  return b !== null && a.dimension.every((d, i) => Math.abs(d - at(b.dimension, i)) < 1e-9);
}

const FORM_TEXT = {
  none: 'this is not an alternating quantity',
  rms: 'it is not a direct quantity',
  peak: 'it is not a direct quantity',
  dc: 'this is a direct voltage or current',
};

/** From the form that was typed to that of the row: √2 for each ampere or volt between RMS and peak; null where it cannot be. */
function formFactor({ rms, peak, dc }: ElectricalForm, form: NumberRow['form']): number | null {
  if (rms === 0 && peak === 0 && dc === 0) return 1;
  if (form === 'rms') return dc === 0 ? Math.SQRT2 ** -peak : null;
  if (form === 'peak') return dc === 0 ? Math.SQRT2 ** rms : null;
  return form === 'dc' && rms === 0 && peak === 0 ? 1 : null;
}

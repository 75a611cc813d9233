import { at } from '../../../shared/core/at.ts';
import { numberText, quantityText } from '../../../shared/sheet/quantityText.ts';
import type { SheetRow, SheetSection } from '../../../shared/sheet/row.ts';
import { OUTPUTS, type ScaledGain } from '../../../shared/sheet/scaledGains.ts';
import { type Markup, markup, withIndices } from '../../ui/markup.ts';
import { figureRow, quantityRow, table } from '../paperParts.ts';

/** Digits of a value that is entered as it stands, a gain in SI or a coefficient of a filter, and of any other. */
const EXACT = 10;
const ROUNDED = 6;
const SCALED = 5;

const SCALED_TEXT =
  'Below each line is how its amperes of amplitude are obtained. From there: times K_f,pk gives newtons, divided by √2 gives amperes RMS, times 100 %/i_pk gives per cent of the peak current. Newtons times 100 %/F_c give per cent of the continuous force.';

/** Gains in plain SI, as they are read back. */
export function gainTable(section: SheetSection): Markup {
  const rows = section.rows.map(({ label, symbol, value, unit, how }) => {
    const text = typeof value === 'number' ? `${numberText(value, EXACT)} ${unit}` : value;
    return quantityRow(label, symbol, text, how);
  });
  return quantities(section, 'Meaning', rows);
}

/** Values in the units that suit them, and how they come about. */
export function quantityTable(section: SheetSection, exact: boolean): Markup {
  const digits = exact ? EXACT : ROUNDED;
  const rows = section.rows.map((row) => {
    const text = typeof row.value === 'number' ? quantityText(row.value, row.unit, digits) : row.value;
    return quantityRow(row.label, row.symbol, text, derivation(row));
  });
  return quantities(section, 'How it is obtained', rows);
}

/** Figures that are read, not entered. */
export function figureTable(section: SheetSection): Markup {
  const rows = section.rows.map(
    ({ label, value, text = typeof value === 'number' ? numberText(value, ROUNDED) : value, how }) =>
      figureRow(label, text, how),
  );
  return markup`${opening(section)}${table('figures', ['Figure', 'Value', 'Meaning'], rows)}</section>`;
}

/** Gains per count, millisecond and sample: a line for each, its formula below it. */
export function scaledTable(gains: readonly ScaledGain[]): Markup {
  const heads = OUTPUTS.map((output) => markup`<th scope="col">${withIndices(output)}</th>`);
  return markup`<section><h2>Gains as drives scale them</h2>
<div class="words"><p>${withIndices(SCALED_TEXT)}</p></div>
<table class="scaled">
<thead><tr><th scope="col">Gain</th><th scope="col">per</th>${heads}</tr></thead>
${gains.map(scaledRows)}</table></section>`;
}

function scaledRows({ symbol, per, forms }: ScaledGain): Markup {
  const values = forms.map(
    ({ value, unit }) =>
      markup`<td class="value">${quantityText(value as number, outputUnit(unit), SCALED)}</td>`,
  );
  const how = at(forms, OUTPUTS.indexOf('A peak')).how;
  return markup`<tbody><tr class="gain"><th scope="row">${withIndices(symbol)}</th><td>${per}</td>${values}</tr>
<tr><td class="how" colspan="${OUTPUTS.length + 2}">${withIndices(how)}</td></tr></tbody>
`;
}

/** 'A RMS/(count/ms)' is A RMS; what it is per stands in a column of its own. */
function outputUnit(unit: string): string {
  return at(unit.split('/'), 0);
}

function quantities(section: SheetSection, lastHead: string, rows: readonly Markup[]): Markup {
  const heads = ['Quantity', 'Symbol', 'Value', lastHead];
  return markup`${opening(section)}${table('quantities', heads, rows)}</section>`;
}

/** A formula without what the columns beside it say: the name where symbols follow, and the result. */
function derivation({ value, unit, how }: SheetRow): string {
  const steps = how.split(' = ');
  const named = steps.length > 3;
  const resulting = typeof value === 'number' && steps.at(-1) === quantityText(value, unit);
  const left = steps.slice(named ? 1 : 0, resulting ? -1 : undefined);
  return left.length === 1 && resulting ? '' : left.join(' = ');
}

function opening({ title, text }: SheetSection): Markup {
  const sentences = text.map((text) => markup`<p>${withIndices(text)}</p>`);
  return markup`<section><h2>${title}</h2>${text.length > 0 ? markup`<div class="words">${sentences}</div>` : ''}
`;
}

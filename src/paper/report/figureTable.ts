import {
  type Calculation,
  type Cell,
  type Column,
  type FigureTable,
  MARKS,
  type Mark,
  type TableRow,
} from '../../studyState/tables/table.ts';
import { type Markup, markup, withIndices } from '../../ui/markup.ts';
import { groupRow } from '../paperParts.ts';

interface PaperTableOptions {
  /** Class of the table. */
  readonly kind: string;
  /** Head of the labels. */
  readonly head?: string;
  /** Where the meaning of a figure stands: under its label, in a column of its own, or elsewhere in the document. */
  readonly meaning?: 'below' | 'beside' | 'elsewhere';
}

/** A table of figures on paper. Marks are words, and what is calculated stands below its figure. */
export function figureTable(
  { columns, groups }: FigureTable,
  { kind, head = 'Figure', meaning = 'elsewhere' }: PaperTableOptions,
): Markup {
  const width = 1 + columns.length + Number(meaning === 'beside');
  const meaningHead = meaning === 'beside' ? markup`<th scope="col">Meaning</th>` : '';
  return markup`<table class="${kind}">
<thead><tr><th scope="col">${head}</th>${columns.map(columnHead)}${meaningHead}</tr></thead>
${groups.map(
  ({ title, rows }) => markup`<tbody>${title === undefined ? '' : groupRow(title, width)}</tbody>
${bodies(rows).map((body) => markup`<tbody>${body.map((row) => tableRow(row, width, meaning))}</tbody>`)}
`,
)}</table>`;
}

/** A figure stays on one sheet with its calculation; other rows need nothing that keeps them together. */
function bodies(rows: readonly TableRow[]): readonly (readonly TableRow[])[] {
  return rows.some(({ calculations }) => calculations) ? rows.map((row) => [row]) : [rows];
}

function columnHead({ letter, title }: Column): Markup {
  return letter === undefined
    ? markup`<th scope="col">${title}</th>`
    : markup`<th scope="col">${letter}<br><span class="candidate-title">${title}</span></th>`;
}

function tableRow(row: TableRow, width: number, meaning: PaperTableOptions['meaning']): Markup {
  const { label, definition, cells, calculations } = row;
  const notes = [...goal(row), ...(meaning === 'below' && definition !== '' ? [definition] : [])];
  return markup`<tr${calculations ? markup` class="figure"` : ''}><th scope="row">${withIndices(label)}${notes.map(note)}</th>${cells.map(cell)}${meaning === 'beside' ? markup`<td>${withIndices(definition)}</td>` : ''}</tr>
${calculations ? markup`<tr><td class="how" colspan="${width}">${byFormula(calculations)}</td></tr>` : ''}`;
}

/** What the job asks, or else which way is better. */
function goal({ asked, better }: TableRow): string[] {
  if (asked) return [`asked: ${asked}`];
  return better === undefined ? [] : [`${better} is better`];
}

function note(text: string): Markup {
  return markup`<br><span class="note">${withIndices(text)}</span>`;
}

/** Why a figure fails is told in the sentences on the candidates. */
function cell({ text, isAbsent = false, marks = [], limit, cause }: Cell): Markup {
  const notes = [
    ...(limit === undefined
      ? marks.map(markWord)
      : [markup`${limit}${marks.map((mark) => markup`: ${markWord(mark)}`)}`]),
    ...(cause ? [withIndices(cause)] : []),
  ];
  return markup`<td><span class="${isAbsent ? 'none' : 'value'}">${text}</span>${notes.map((each) => markup`<br><span class="note">${each}</span>`)}</td>`;
}

/** What is as it should be is no news. */
const QUIET: readonly Mark[] = ['within', 'close'];

function markWord(mark: Mark): Markup {
  const { word } = MARKS[mark];
  return QUIET.includes(mark) ? markup`${word}` : markup`<span class="mark">${word}</span>`;
}

/** Formulas that several candidates share are printed once, and numbers that they share as well. */
function byFormula(calculations: readonly Calculation[]): Markup[] {
  const formulas = new Map<string, Map<string, string[]>>();
  for (const { formula, numbers } of calculations) {
    const lettersOf = formulas.get(formula) ?? new Map<string, string[]>();
    for (const { letter, text } of numbers) lettersOf.set(text, [...(lettersOf.get(text) ?? []), letter]);
    formulas.set(formula, lettersOf);
  }
  return [...formulas].map(
    ([formula, lettersOf]) =>
      markup`<div>${withIndices(formula)}${[...lettersOf].map(
        ([text, letters]) => markup`<br>${letters.sort().join(', ')}: ${withIndices(text)}`,
      )}</div>`,
  );
}

import { candidateLetterMark } from '../../sideBySide/candidateName.ts';
import {
  type Calculation,
  type Cell,
  type Column,
  type FigureTable,
  MARKS,
  type Mark,
  type TableRow,
} from '../../studyState/tables/table.ts';
import { element } from '../../ui/dom.ts';
import { type FigureRow, figureTable } from '../../ui/figureTable.ts';
import { withIndices } from '../../ui/markup.ts';
import './figureTable.css';

/** What a table has besides its figures. */
interface FigureTableOptions {
  /** Below the head of a column. */
  readonly columnFoot?: (column: Column) => HTMLElement;
}

/** A table of figures on the page. A row opens to what its figure means or how it was worked out, and stays open. */
export class FigureTableView {
  readonly element = element('div', { class: 'figure-table-frame', role: 'region', tabindex: 0 });
  readonly #options: FigureTableOptions;
  readonly #open = new Set<string>();

  constructor(options: FigureTableOptions = {}) {
    this.#options = options;
  }

  show(caption: string, { columns, groups }: FigureTable): void {
    const hasAsked = groups.some(({ rows }) => rows.some(({ asked }) => asked !== undefined));
    const width = 1 + Number(hasAsked) + columns.length;
    this.element.setAttribute('aria-label', caption);
    this.element.replaceChildren(
      figureTable({
        class: 'figure-table',
        caption,
        columns: [
          'Figure',
          ...(hasAsked ? ['The job asks'] : []),
          ...columns.map((column) => this.#columnHead(column)),
        ],
        groups: groups.map(({ title, rows }) => ({
          title,
          rows: rows.map((row) => this.#row(row, hasAsked, width)),
        })),
      }),
    );
  }

  hide(): void {
    this.element.replaceChildren();
  }

  #columnHead(column: Column): HTMLElement {
    const { columnFoot } = this.#options;
    const { letter, title } = column;
    return element(
      'th',
      { scope: 'col' },
      ...(letter === undefined ? [] : [candidateLetterMark(letter), ' ']),
      title,
      ...(columnFoot ? [' ', columnFoot(column)] : []),
    );
  }

  #row(row: TableRow, hasAsked: boolean, width: number): FigureRow {
    const { id, label, asked, cells } = row;
    const detail = element(
      'tr',
      { class: 'figure-table-detail', id, hidden: !this.#open.has(id) },
      element('td', { colspan: width }, ...details(row)),
    );
    const toggle = element('button', {
      type: 'button',
      class: 'figure-table-toggle',
      'aria-expanded': String(!detail.hidden),
      'aria-controls': id,
      onclick: () => {
        detail.hidden = !detail.hidden;
        toggle.setAttribute('aria-expanded', String(!detail.hidden));
        if (detail.hidden) this.#open.delete(id);
        else this.#open.add(id);
      },
    });
    toggle.innerHTML = withIndices(label).text;
    return {
      head: toggle,
      cells: [
        ...(hasAsked ? [element('td', { class: 'figure-note' }, asked ?? '')] : []),
        ...cells.map(cellElement),
      ],
      details: detail,
    };
  }
}

function cellElement({ text, isAbsent = false, marks = [], limit, reason, cause }: Cell): HTMLElement {
  const note = (kind: string, said: string | null | undefined) =>
    said ? [element('p', { class: kind }, said)] : [];
  return element(
    'td',
    {},
    element('span', { class: isAbsent ? 'figure-none' : 'figure-value' }, text),
    ...marks.flatMap((mark) => [' ', markElement(mark)]),
    ...note('figure-note', limit),
    ...note('figure-reason', reason),
    ...note('figure-note', cause),
  );
}

function markElement(mark: Mark): HTMLElement {
  const { shape, word } = MARKS[mark];
  return element('span', { class: 'figure-mark', 'data-mark': mark }, `${shape} ${word}`);
}

function details({ definition, better, calculations = [] }: TableRow): HTMLElement[] {
  const which = better === undefined ? '' : ` ${better === 'less' ? 'Less' : 'More'} is better.`;
  const meaning = definition === '' ? [] : [element('p', {}, `${definition}${which}`)];
  return [...meaning, ...calculations.map(calculationElement)];
}

function calculationElement({ formula, note, numbers }: Calculation): HTMLElement {
  return element(
    'div',
    { class: 'figure-calculation' },
    withSubscripts('p', 'figure-formula', formula),
    element(
      'dl',
      {},
      ...numbers.flatMap(({ letter, text }) => [
        element('dt', {}, candidateLetterMark(letter)),
        withSubscripts('dd', '', text),
      ]),
    ),
    withSubscripts('p', 'figure-note', note),
  );
}

function withSubscripts(tag: 'p' | 'dd', name: string, text: string): HTMLElement {
  const made = element(tag, name === '' ? {} : { class: name });
  made.innerHTML = withIndices(text).text;
  return made;
}

/** A table of figures with a column for each candidate, test or time: what page and paper both show, each in its own way. */
export interface FigureTable {
  readonly columns: readonly Column[];
  readonly groups: readonly RowGroup[];
}

export interface Column {
  /** Letter of the candidate that it belongs to. */
  readonly letter?: string;
  readonly title: string;
}

interface RowGroup {
  /** What its rows have in common; none where there is only one group. */
  readonly title?: string;
  readonly rows: readonly TableRow[];
}

export interface TableRow {
  readonly id: string;
  readonly label: string;
  /** What the figure means; empty where calculations say it. */
  readonly definition: string;
  readonly calculations?: readonly Calculation[];
  /** What the job asks for; null where it asks nothing, left out where that is told elsewhere. */
  readonly asked?: string | null;
  readonly better?: 'less' | 'more';
  /** One for each column. */
  readonly cells: readonly Cell[];
}

export interface Cell {
  readonly text: string;
  /** There is no figure; the text says so. */
  readonly isAbsent?: boolean;
  /** How it stands among the candidates, or to what is allowed. */
  readonly marks?: readonly Mark[];
  /** What is allowed: 'at most 300 N'. */
  readonly limit?: string;
  /** Why it does not do. */
  readonly reason?: string | null;
  /** What it comes from. */
  readonly cause?: string | null;
}

/** How a figure was worked out, for the candidates that share the formula. */
export interface Calculation {
  readonly formula: string;
  readonly note: string;
  readonly numbers: readonly { readonly letter: string; readonly text: string }[];
}

/** Shape and word of each mark: nothing is told by colour alone. */
export const MARKS = {
  best: { shape: '●', word: 'best' },
  tie: { shape: '○', word: 'joint best' },
  fails: { shape: '✕', word: 'fails' },
  within: { shape: '✓', word: 'within' },
  close: { shape: '◐', word: 'close' },
  beyond: { shape: '✕', word: 'beyond' },
} as const;

export type Mark = keyof typeof MARKS;

/** Rows without a heading. */
export function ungrouped(columns: readonly Column[], rows: readonly TableRow[]): FigureTable {
  return { columns, groups: [{ rows }] };
}

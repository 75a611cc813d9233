/** A figure of all candidates, as a row of a table. */
export interface CandidateTableRow {
  readonly id: string;
  readonly label: string;
  /** Shown when the label is clicked. */
  readonly definition: string;
  /** One for each candidate. */
  readonly cells: readonly { readonly text: string; readonly fails?: boolean }[];
}

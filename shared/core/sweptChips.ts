/** How far the middle of the unit has been since the chips were poured, m, and what they brake by now, N. */
export interface SweptChips {
  readonly poured: number;
  readonly from: number;
  readonly to: number;
  readonly force: number;
}

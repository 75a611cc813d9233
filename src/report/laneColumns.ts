import { type Markup, markup } from '../drawing/markup.ts';

interface Lane {
  readonly letter: string;
  readonly title: string;
}

/** The head of a table with a column for each lane, after the heads of what stands before them. */
export function laneHead(before: readonly string[], lanes: readonly Lane[]): Markup {
  return markup`<thead><tr>${before.map((head) => markup`<th scope="col">${head}</th>`)}${lanes.map(
    ({ letter, title }) => markup`<th scope="col">${letter}<br><span class="lane-title">${title}</span></th>`,
  )}</tr></thead>`;
}

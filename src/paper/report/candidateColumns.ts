import { type Markup, markup } from '../../ui/markup.ts';

interface Candidate {
  readonly letter: string;
  readonly title: string;
}

/** The head of a table with a column for each candidate, after the heads of what stands before them. */
export function candidateHead(before: readonly string[], candidates: readonly Candidate[]): Markup {
  return markup`<thead><tr>${before.map((head) => markup`<th scope="col">${head}</th>`)}${candidates.map(
    ({ letter, title }) =>
      markup`<th scope="col">${letter}<br><span class="candidate-title">${title}</span></th>`,
  )}</tr></thead>`;
}

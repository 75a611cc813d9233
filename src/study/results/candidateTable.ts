import { CELL_TEXT } from '../../../shared/verdict/judgement.ts';
import { candidateName } from '../../sideBySide/candidateName.ts';
import type { CandidateTableRow } from '../../studyState/candidateTableRow.ts';
import { type Markup, markup } from '../../ui/markup.ts';

interface Candidate {
  readonly letter: string;
  readonly title: string;
}

/** Figures of all candidates, one column each. What a figure means is one click away. */
export function candidateTable(
  caption: string,
  candidates: readonly Candidate[],
  rows: readonly CandidateTableRow[],
): Markup {
  return markup`<div class="candidate-table-frame"><table class="candidate-table result-table">
<caption>${caption}</caption>
<thead><tr><th scope="col">Figure</th>${candidates.map((candidate) => markup`<th scope="col">${candidateName(candidate)}</th>`)}</tr></thead>
<tbody>${rows.map(
    ({
      id,
      label,
      definition,
      cells,
    }) => markup`<tr><th scope="row"><details id="${id}"><summary>${label}</summary><p>${definition}</p></details></th>
${cells.map(({ text, fails = false }) => (fails ? markup`<td class="is-beyond">${text} <span>✕ ${CELL_TEXT.fails}</span></td>` : markup`<td>${text}</td>`))}</tr>`,
  )}</tbody>
</table></div>`;
}

/** A drawing of one candidate under its name. */
export function candidateFigure(candidate: Candidate, content: Markup): Markup {
  return markup`<figure><figcaption>${candidateName(candidate)}</figcaption>${content}</figure>`;
}

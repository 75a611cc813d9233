import {
  CELL_TEXT,
  VERDICT_GROUPS,
  type Verdict,
  type VerdictCell,
  type VerdictRow,
} from '../../../shared/verdict/judgement.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { type Markup, markup, withIndices } from '../../ui/markup.ts';
import { groupRow, list, meaning } from '../paperParts.ts';

/** Which drive, and by what rule. */
export function answerSection({ choice, rule, fairness }: Verdict): Markup {
  return markup`<section><h2>The answer</h2>
<p class="answer">${withIndices(choice)}</p>
<h3>How it was chosen</h3>
<p>${withIndices(rule)}</p>
<p>${withIndices(fairness)}</p></section>`;
}

/** Every figure of every candidate. The best is told by a word, and so is what does not do. */
export function verdictTable({ rows }: Verdict, candidates: readonly SimulatedCandidate[]): Markup {
  return markup`<section><h2>The candidates side by side</h2>
<table class="verdict">
<thead><tr><th scope="col">Figure</th>${candidates.map(({ letter, title }) => markup`<th scope="col">${letter}<br><span class="candidate-title">${title}</span></th>`)}</tr></thead>
<tbody>${rows.map((row, k) => markup`${row.group === rows[k - 1]?.group ? '' : groupRow(VERDICT_GROUPS[row.group], candidates.length + 1)}${verdictRow(row)}`)}</tbody></table></section>`;
}

/** What is meant by each figure of the table. */
export function figureMeanings({ rows }: Verdict): Markup {
  return markup`<dl class="meanings">${rows.map(({ label, definition }) => meaning(label, definition))}</dl>`;
}

function verdictRow({ label, asked, better, cells }: VerdictRow): Markup {
  const goal = asked === null ? `${better} is better` : `asked: ${asked}`;
  return markup`<tr><th scope="row">${withIndices(label)}<br><span class="goal">${goal}</span></th>${cells.map(verdictCell)}</tr>
`;
}

/** Why it does not do is told where the candidates are told apart. */
function verdictCell({ text, cause, mark, fails }: VerdictCell): Markup {
  const said = [...(mark === null ? [] : [CELL_TEXT[mark]]), ...(fails ? [CELL_TEXT.fails] : [])].join(', ');
  return markup`<td class="${mark === null ? 'plain' : 'value'}">${text}${said === '' ? '' : markup`<br><span class="mark">${said}</span>`}${cause === null ? '' : markup`<br><span class="note">${withIndices(cause)}</span>`}</td>`;
}

export function standoutSection({ sentences }: Verdict): Markup {
  if (sentences.length === 0) return markup``;
  return markup`<section><h2>What stands out</h2>${list(sentences)}</section>`;
}

export function flipSection({ flips, flipNote }: Verdict): Markup {
  return markup`<section><h2>What would change the answer</h2>
${flips.length === 0 ? markup`<p>Nothing of what was tried.</p>` : list(flips.map(({ sentence }) => sentence))}
<p class="note">${withIndices(flipNote)}</p></section>`;
}

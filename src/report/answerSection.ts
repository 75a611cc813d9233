import type { Verdict, VerdictCell, VerdictRow } from '../../shared/study/verdict.ts';
import { type Markup, markup } from '../drawing/markup.ts';
import { list, meaning } from '../paper/paperParts.ts';
import type { SimulatedLane } from './reportInput.ts';

/** Which drive, and by what rule. */
export function answerSection(
  { choice, rule, fairness, shortfalls }: Verdict,
  lanes: readonly SimulatedLane[],
): Markup {
  const short = lanes.flatMap(({ letter, title }, k) => {
    const reasons = shortfalls[k] ?? [];
    return reasons.length === 0 ? [] : [`${letter}, ${title}: ${reasons.join(' ')}`];
  });
  return markup`<section><h2>The answer</h2>
<p class="answer">${choice}</p>
${short.length > 0 ? markup`<h3>What falls short</h3>${list(short)}` : ''}
<h3>How it was chosen</h3>
<p>${rule}</p>
<p>${fairness}</p></section>`;
}

/** Every figure of every lane. The best is told by a word, and so is what does not do. */
export function verdictTable({ rows }: Verdict, lanes: readonly SimulatedLane[]): Markup {
  return markup`<section><h2>The lanes side by side</h2>
<table class="verdict">
<thead><tr><th scope="col">Figure</th>${lanes.map(({ letter, title }) => markup`<th scope="col">${letter}<br><span class="lane-title">${title}</span></th>`)}</tr></thead>
<tbody>${rows.map(verdictRow)}</tbody></table>
<h3>What the figures mean</h3>
<dl class="meanings">${rows.map(({ label, definition }) => meaning(label, definition))}</dl></section>`;
}

function verdictRow({ label, asked, better, cells }: VerdictRow): Markup {
  const goal = asked === null ? `${better} is better` : `asked: ${asked}`;
  return markup`<tr><th scope="row">${label}<br><span class="goal">${goal}</span></th>${cells.map(verdictCell)}</tr>
`;
}

function verdictCell({ text, cause, mark, fails, reason }: VerdictCell): Markup {
  const words = [mark === 'best' ? 'best' : mark === 'tie' ? 'best, shared' : '', fails ? 'does not do' : ''];
  const said = words.filter((word) => word !== '').join(', ');
  const notes = [cause, reason].filter((note) => note !== null);
  return markup`<td class="${mark === null ? 'plain' : 'value'}">${text}${said === '' ? '' : markup`<br><span class="mark">${said}</span>`}${notes.map((note) => markup`<br><span class="note">${note}</span>`)}</td>`;
}

export function standoutSection({ sentences }: Verdict): Markup {
  if (sentences.length === 0) return markup``;
  return markup`<section><h2>What stands out</h2>${list(sentences)}</section>`;
}

export function flipSection({ flips, flipNote }: Verdict): Markup {
  return markup`<section><h2>What would change the answer</h2>
${flips.length === 0 ? markup`<p>Nothing of what was tried.</p>` : list(flips.map(({ sentence }) => sentence))}
<p class="note">${flipNote}</p></section>`;
}

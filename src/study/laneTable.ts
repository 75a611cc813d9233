import { CELL_WORDS } from '../../shared/study/verdict.ts';
import { type Markup, markup } from '../drawing/markup.ts';
import { laneName } from '../lanes/laneName.ts';

export interface LaneTableRow {
  readonly id: string;
  readonly label: string;
  /** Shown when the label is clicked. */
  readonly definition: string;
  /** One for each lane. */
  readonly cells: readonly { readonly text: string; readonly fails?: boolean }[];
}

interface Lane {
  readonly letter: string;
  readonly title: string;
}

/** Figures of all lanes, one column each. What a figure means is one click away. */
export function laneTable(caption: string, lanes: readonly Lane[], rows: readonly LaneTableRow[]): Markup {
  return markup`<div class="lane-table-frame"><table class="lane-table result-table">
<caption>${caption}</caption>
<thead><tr><th scope="col">Figure</th>${lanes.map((lane) => markup`<th scope="col">${laneName(lane)}</th>`)}</tr></thead>
<tbody>${rows.map(
    ({
      id,
      label,
      definition,
      cells,
    }) => markup`<tr><th scope="row"><details id="${id}"><summary>${label}</summary><p>${definition}</p></details></th>
${cells.map(({ text, fails = false }) => (fails ? markup`<td class="is-beyond">${text} <span>✕ ${CELL_WORDS.fails}</span></td>` : markup`<td>${text}</td>`))}</tr>`,
  )}</tbody>
</table></div>`;
}

/** A drawing of one lane under its name. */
export function laneFigure(lane: Lane, content: Markup): Markup {
  return markup`<figure><figcaption>${laneName(lane)}</figcaption>${content}</figure>`;
}

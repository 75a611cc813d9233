import type { Verdict } from '../../../shared/verdict/judgement.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { verdictTable } from '../../studyState/tables/verdictRows.ts';
import { type Markup, markup, withIndices } from '../../ui/markup.ts';
import { list, meanings } from '../paperParts.ts';
import { figureTable } from './figureTable.ts';

/** By what rule a drive is chosen; the answer itself is on the first page. */
export function ruleSection({ rule, fairness }: Verdict): Markup {
  return markup`<section><h2>How the choice is made</h2>
<p>${withIndices(rule)}</p>
<p>${withIndices(fairness)}</p></section>`;
}

/** Every figure of every candidate. */
export function sideBySideSection(verdict: Verdict, candidates: readonly SimulatedCandidate[]): Markup {
  return markup`<section><h2>The candidates side by side</h2>
${figureTable(verdictTable(verdict, candidates), { kind: 'verdict' })}</section>`;
}

/** What is meant by each figure of the table. */
export function figureMeanings({ rows }: Verdict): Markup {
  return meanings(rows);
}

export function standoutSection({ sentences }: Verdict): Markup {
  if (sentences.length === 0) return markup``;
  return markup`<section><h2>Key differences</h2>${list(sentences)}</section>`;
}

export function flipSection({ flips, flipNote, purchases, robustness }: Verdict): Markup {
  return markup`<section><h2>What would change the answer</h2>
${list([...(robustness === '' ? [] : [robustness]), ...purchases])}
${flips.length === 0 ? '' : list(flips.map(({ sentence }) => sentence))}
<p class="note">${withIndices(flipNote)}</p></section>`;
}

import { envelopeChart } from '../../drawings/envelope.ts';
import type { CandidateState } from '../../studyState/state.ts';
import { sizingTable } from '../../studyState/tables/sizingRows.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { figure, list, meaning } from '../paperParts.ts';
import { figureTable } from './figureTable.ts';
import { HALF } from './halfSize.ts';

/** What can be said of a candidate with pencil and paper; how stands in one table for all candidates. */
export function sizingSection({ sizing }: CandidateState, candidates: readonly CandidateState[]): Markup {
  const { passes, reasons, envelope } = sizing;
  const envelopes = candidates.map((candidate) => candidate.sizing.envelope);
  return markup`<section><h3>Sizing</h3>
<div class="drawings"><div><p>${passes ? 'No figure is beyond its limit.' : 'By these figures the drive cannot do the job.'}</p>${reasons.length > 0 ? list(reasons) : ''}
<p class="note">Solid: force for the overload time. Dashed: continuous force. Thin: what the job needs, point by point. All candidates share one scale.</p></div>
${figure('Force against speed', envelopeChart(envelope, envelopes, HALF))}</div></section>`;
}

/** Every figure of every candidate, below it the formula and the numbers of each candidate put in. */
export function sizingOfAll(candidates: readonly CandidateState[]): Markup {
  return markup`<section><h2>Sizing by calculation</h2>
<div class="words"><p>The source of each formula is given further below.</p></div>
${figureTable(sizingTable(candidates), { kind: 'sizing' })}</section>`;
}

/** Where the formulas come from and what they leave out: once for all candidates, which share most of it. */
export function sizingNotes(candidates: readonly CandidateState[]): Markup {
  const notes = new Map<string, Set<string>>();
  for (const { label, note } of candidates.flatMap(({ sizing }) => sizing.figures)) {
    if (note !== '') notes.set(label, (notes.get(label) ?? new Set()).add(note));
  }
  return markup`<dl class="meanings">${[...notes].map(([label, said]) => meaning(label, [...said].join(' Or: ')))}</dl>`;
}

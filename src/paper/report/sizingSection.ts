import { ranged } from '../../../shared/core/format.ts';
import type { SizingFigure, Standing } from '../../../shared/sizing/sizing.ts';
import { envelopeChart } from '../../drawings/envelope.ts';
import type { CandidateState } from '../../studyState/state.ts';
import { type Markup, markup, withIndices } from '../../ui/markup.ts';
import { figure, list, meaning } from '../paperParts.ts';
import { candidateHead } from './candidateColumns.ts';
import { HALF } from './halfSize.ts';

const STANDING: Readonly<Record<Standing, string>> = {
  good: 'within',
  close: 'close to it',
  beyond: 'BEYOND IT',
  plain: '',
};

/** What can be said of a candidate with pencil and paper; how stands in one table for all candidates. */
export function sizingSection({ sizing }: CandidateState, candidates: readonly CandidateState[]): Markup {
  const { passes, reasons, envelope } = sizing;
  const envelopes = candidates.map((candidate) => candidate.sizing.envelope);
  return markup`<section><h3>Sizing</h3>
<div class="drawings"><div><p>${passes ? 'No figure is beyond its limit.' : 'By these figures the drive does not do the job.'}</p>${reasons.length > 0 ? list(reasons) : ''}
<p class="note">Unbroken: what the motors give for the overload time. Dashed: for ever. Thin: what the job asks, point by point. All candidates are drawn to one scale.</p></div>
${figure('Force against speed', envelopeChart(envelope, envelopes, HALF))}</div></section>`;
}

/** Every figure of every candidate, below it the formula and the numbers of each candidate put in. */
export function sizingOfAll(candidates: readonly CandidateState[]): Markup {
  const ids = [...new Set(candidates.flatMap(({ sizing }) => sizing.figures.map(({ id }) => id)))];
  return markup`<section><h2>Sizing by calculation</h2>
<div class="words"><p>Where each formula comes from stands further below.</p></div>
<table class="sizing">
${candidateHead(['Figure'], candidates)}
${ids.map((id) => figureRows(id, candidates))}</table></section>`;
}

function figureRows(id: string, candidates: readonly CandidateState[]): Markup {
  const figures = candidates.map(({ sizing }) => sizing.figures.find((each) => each.id === id) ?? null);
  const found = figures.filter((each) => each !== null);
  const text = [...new Map(found.map(({ label, symbol }) => [label, symbol]))].map(
    ([label, symbol]) => `${label} ${symbol}`,
  );
  const formulas = [...new Set(found.map(({ formula }) => formula))];
  const how = formulas.map((formula) => {
    const lettersOf = new Map<string, string[]>();
    for (const [k, each] of figures.entries()) {
      if (each?.formula !== formula) continue;
      lettersOf.set(each.numbers, [...(lettersOf.get(each.numbers) ?? []), candidates[k]!.letter]);
    }
    return markup`<div>${withIndices(formula)}${[...lettersOf].map(
      ([numbers, letters]) => markup`<br>${letters.join(', ')}: ${withIndices(numbers)}`,
    )}</div>`;
  });
  return markup`<tbody><tr class="figure"><th scope="row">${withIndices(text.join(' · '))}</th>${figures.map(figureCell)}</tr>
<tr><td class="how" colspan="${candidates.length + 1}">${how}</td></tr></tbody>
`;
}

function figureCell(figure: SizingFigure | null): Markup {
  if (figure === null) return markup`<td>none</td>`;
  const { value, unit, limit, standing } = figure;
  const allowed =
    limit === null
      ? markup``
      : markup`<br><span class="note">at ${limit.side} ${ranged(limit.value, unit)}: ${STANDING[standing]}</span>`;
  return markup`<td><span class="value">${ranged(value, unit)}</span>${allowed}</td>`;
}

/** Where the formulas come from and what they leave out: once for all candidates, which share most of it. */
export function sizingNotes(candidates: readonly CandidateState[]): Markup {
  const notes = new Map<string, Set<string>>();
  for (const { label, note } of candidates.flatMap(({ sizing }) => sizing.figures)) {
    if (note !== '') notes.set(label, (notes.get(label) ?? new Set()).add(note));
  }
  return markup`<dl class="meanings">${[...notes].map(([label, said]) => meaning(label, [...said].join(' Or: ')))}</dl>`;
}

import { ranged } from '../../shared/format.ts';
import type { SizingFigure, Standing } from '../../shared/sizing/sizing.ts';
import { envelopeChart } from '../drawing/charts/envelope.ts';
import { type Markup, markup, withIndices } from '../drawing/markup.ts';
import { figure, list, meaning } from '../paper/paperParts.ts';
import type { LaneState } from '../study/state.ts';
import { HALF } from './halfSize.ts';
import { laneHead } from './laneColumns.ts';

const STANDING: Readonly<Record<Standing, string>> = {
  good: 'within',
  close: 'close to it',
  beyond: 'BEYOND IT',
  plain: '',
};

/** What can be said of a lane with pencil and paper; how stands in one table for all lanes. */
export function sizingSection({ sizing }: LaneState, lanes: readonly LaneState[]): Markup {
  const { passes, reasons, envelope } = sizing;
  const envelopes = lanes.map((lane) => lane.sizing.envelope);
  return markup`<section><h3>Sizing</h3>
<div class="drawings"><div><p>${passes ? 'No figure is beyond its limit.' : 'By these figures the drive does not do the job.'}</p>${reasons.length > 0 ? list(reasons) : ''}
<p class="note">Unbroken: what the motors give for the overload time. Dashed: for ever. Thin: what the job asks, point by point. All lanes are drawn to one scale.</p></div>
${figure('Force against speed', envelopeChart(envelope, envelopes, HALF))}</div></section>`;
}

/** Every figure of every lane, below it the formula and the numbers of each lane put in. */
export function sizingOfAll(lanes: readonly LaneState[]): Markup {
  const ids = [...new Set(lanes.flatMap(({ sizing }) => sizing.figures.map(({ id }) => id)))];
  return markup`<section><h2>Sizing by calculation</h2>
<div class="words"><p>Where each formula comes from stands further below.</p></div>
<table class="sizing">
${laneHead(['Figure'], lanes)}
${ids.map((id) => figureRows(id, lanes))}</table></section>`;
}

function figureRows(id: string, lanes: readonly LaneState[]): Markup {
  const figures = lanes.map(({ sizing }) => sizing.figures.find((each) => each.id === id) ?? null);
  const found = figures.filter((each) => each !== null);
  const words = [...new Map(found.map(({ label, symbol }) => [label, symbol]))].map(
    ([label, symbol]) => `${label} ${symbol}`,
  );
  const formulas = [...new Set(found.map(({ formula }) => formula))];
  const how = formulas.map((formula) => {
    const lettersOf = new Map<string, string[]>();
    for (const [k, each] of figures.entries()) {
      if (each?.formula !== formula) continue;
      lettersOf.set(each.numbers, [...(lettersOf.get(each.numbers) ?? []), lanes[k]!.letter]);
    }
    return markup`<div>${withIndices(formula)}${[...lettersOf].map(
      ([numbers, letters]) => markup`<br>${letters.join(', ')}: ${withIndices(numbers)}`,
    )}</div>`;
  });
  return markup`<tbody><tr class="figure"><th scope="row">${withIndices(words.join(' · '))}</th>${figures.map(figureCell)}</tr>
<tr><td class="how" colspan="${lanes.length + 1}">${how}</td></tr></tbody>
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

/** Where the formulas come from and what they leave out: once for all lanes, which share most of it. */
export function sizingNotes(lanes: readonly LaneState[]): Markup {
  const notes = new Map<string, Set<string>>();
  for (const { label, note } of lanes.flatMap(({ sizing }) => sizing.figures)) {
    if (note !== '') notes.set(label, (notes.get(label) ?? new Set()).add(note));
  }
  return markup`<dl class="meanings">${[...notes].map(([label, said]) => meaning(label, [...said].join(' Or: ')))}</dl>`;
}

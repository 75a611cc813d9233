import { ranged } from '../../shared/format.ts';
import type { SizingFigure, Standing } from '../../shared/sizing/sizing.ts';
import { envelopeChart } from '../drawing/charts/envelope.ts';
import { type Markup, markup, withIndices } from '../drawing/markup.ts';
import { figure, list, meaning } from '../paper/paperParts.ts';
import type { LaneState } from '../study/state.ts';

const STANDING: Readonly<Record<Standing, string>> = {
  good: 'within',
  close: 'close to it',
  beyond: 'BEYOND IT',
  plain: '',
};

/** What can be said with pencil and paper: each figure with its formula, and with the numbers put in. */
export function sizingSection({ sizing }: LaneState, lanes: readonly LaneState[]): Markup {
  const { figures, passes, reasons, envelope } = sizing;
  const envelopes = lanes.map((lane) => lane.sizing.envelope);
  return markup`<section><h3>Sizing</h3>
<div class="words"><p>${passes ? 'No figure is beyond its limit.' : 'By these figures the drive does not do the job.'} Where each formula comes from stands further below.</p>${reasons.length > 0 ? list(reasons) : ''}</div>
<table class="sizing">
<thead><tr><th scope="col">Figure</th><th scope="col">Symbol</th><th scope="col">Value</th><th scope="col">Limit</th></tr></thead>
${figures.map(figureRows)}</table>
${figure('Force against speed', envelopeChart(envelope, envelopes))}
<p class="note">Unbroken: what the motors give for the overload time. Dashed: for ever. Thin: what the job asks, point by point.</p></section>`;
}

function figureRows({ label, symbol, value, unit, formula, numbers, limit, standing }: SizingFigure): Markup {
  const allowed =
    limit === null ? '' : `at ${limit.side} ${ranged(limit.value, unit)}: ${STANDING[standing]}`;
  return markup`<tbody><tr class="figure"><th scope="row">${withIndices(label)}</th><td>${withIndices(symbol)}</td><td class="value">${ranged(value, unit)}</td><td>${allowed}</td></tr>
<tr><td class="how" colspan="4">${withIndices(formula)}<br>${withIndices(numbers)}</td></tr></tbody>
`;
}

/** Where the formulas come from and what they leave out: once for all lanes, which share most of it. */
export function sizingNotes(lanes: readonly LaneState[]): Markup {
  const notes = new Map<string, Set<string>>();
  for (const { label, note } of lanes.flatMap(({ sizing }) => sizing.figures)) {
    if (note !== '') notes.set(label, (notes.get(label) ?? new Set()).add(note));
  }
  return markup`<dl class="meanings">${[...notes].map(([label, said]) => meaning(label, [...said].join(' Or: ')))}</dl>`;
}

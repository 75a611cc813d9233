import { FILTER_NUMBERS } from '../../../shared/core/parameters/filters.ts';
import type { LoopAnalysis } from '../../../shared/protocol/analysis.ts';
import type { GainSheet } from '../../../shared/sheet/gainSheet.ts';
import { bodeSheet } from '../../plot/loop/bodeSheet.ts';
import { nyquistSheet } from '../../plot/loop/nyquist.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { paperPage } from '../paperPage.ts';
import { box, figure, list } from '../paperParts.ts';
import { SHEET_STYLE } from './sheetStyle.ts';
import { figureTable, gainTable, quantityTable, scaledTable } from './tables.ts';

const TO_FILL_IN = [
  'Machine and axis',
  'Drive',
  'Limits for the first moves',
  'Entered by, date',
  'Checked by, date',
];

/**
 * The gain sheet as a document of its own, plots and style inside, to print, to save or to show: it needs nothing from anywhere.
 * `printed` is the date that stands on it.
 */
export function gainSheetHtml(sheet: GainSheet, analysis: LoopAnalysis | null, printed = ''): string {
  const { gains, margins, move, others } = arranged(sheet);
  const content = markup`<h1>Gain sheet</h1>
<p class="title">${sheet.title}</p>
<p class="made"><span>${sheet.madeBy}</span><span>${printed}</span></p>
${box('warning', 'Read this first', sheet.warnings)}
${box('caution', 'Cautions', sheet.cautions)}
${gains.map(gainTable)}
${scaledTable(sheet.scaled)}
${others.map((section) => quantityTable(section, isFilter(section.id)))}
${margins.map(figureTable)}
<section><h2>Assumptions</h2>${list(sheet.assumptions)}</section>
${analysis ? plots(analysis) : ''}
${move.map(figureTable)}
<section class="together"><h2>When the gains are entered</h2><table class="signed">
${TO_FILL_IN.map((text) => markup`<tr><th scope="row">${text}</th><td></td></tr>`)}
</table></section>`;
  return paperPage(`Gain sheet: ${sheet.title}`, SHEET_STYLE, content);
}

/** The sections by how they are shown. A filter that is off has nothing to enter: that it is off stands among the gains. */
function arranged({ sections, parameters }: GainSheet) {
  const off = FILTER_NUMBERS.filter((n) => parameters[`filter${n}`] === 'off').map((n) => `filter${n}`);
  const shown = sections.filter(({ id }) => !off.includes(id));
  const only = (id: string) => shown.filter((section) => section.id === id);
  return {
    gains: only('gains'),
    margins: [...only('asked'), ...only('margins')],
    move: only('move'),
    others: shown.filter(({ id }) => !['gains', 'asked', 'margins', 'move'].includes(id)),
  };
}

function isFilter(id: string): boolean {
  return FILTER_NUMBERS.some((n) => id === `filter${n}`);
}

function plots(analysis: LoopAnalysis): Markup {
  return markup`<div class="together">${figure('Frequency response', bodeSheet(analysis))}${figure('Nyquist plot', nyquistSheet(analysis))}</div>`;
}

import tokens from '../../ui/look/tokens.css?raw';
import { paperStyle } from '../paperStyle.ts';

/** Colours of the quantities as the page has them in the light, for the drawings. */
const COLOURS = [...tokens.slice(0, tokens.indexOf('}')).matchAll(/--q-[a-z]+: #[0-9a-f]{6};/g)].join('\n');

/** Of the report: how paper looks, the colours of the drawings, and what only a report has. */
export const REPORT_STYLE = `${paperStyle('Simulated with Waybench. Shows tendencies, guarantees nothing.')}
:root {
${COLOURS}
--paper: #fff;
}
svg.drawing { width: 100%; max-width: 640px; }
/* One page to hand over. */
.summary { break-after: page; }
.summary > * + * { margin-top: 0.5rem; }
.summary-head:has(.picture) { display: grid; grid-template-columns: minmax(0, 1fr) 40%; gap: 1.5rem; }
.summary-head > div > * + * { margin-top: 0.5rem; }
.summary .picture { max-height: 50mm; }
.handed th { width: 9rem; white-space: nowrap; }
.bars { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 0.6rem 2rem; }
.bars table { margin: 0; }
.bars caption { font-weight: 600; text-align: left; }
.bars th { width: 1.5rem; }
.bars :is(th, td) { padding-block: 0.1rem; border: 0; }
.bars .bar { width: 45%; }
.bars svg { width: 100%; height: 0.7rem; margin: 0; }
.bars rect { fill: #555; }
.bars p { margin-top: 0.15rem; font-size: 0.9em; }
/* The appendix comes on request: the box above it shows and prints it. */
.appendix-choice { display: block; margin-top: 1.5rem; font-weight: 600; }
.appendix { display: none; }
body:has(#with-appendix:checked) .appendix { display: block; break-before: page; }
table + table { margin-top: 0.6rem; }

.drawing text { font-size: 14px; }
h3 { margin: 1rem 0 0.3rem; font-size: 1.05rem; break-after: avoid; }
.answer { font-size: 1.15rem; font-weight: 600; }
.group th { padding-top: 0.5rem; font-weight: 600; break-after: avoid; }
.group { break-after: avoid; }
.note, .goal, .candidate-title { font-size: 0.92em; font-weight: 400; }
.mark { font-weight: 700; text-transform: uppercase; letter-spacing: 0.02em; font-size: 0.85em; }
/* Room for inches with millimetres beside them. */
.job :is(th, td):nth-child(3) { width: 28%; }
:is(.verdict, .by-candidate, .sizing) { table-layout: fixed; }
:is(.verdict, .by-candidate, .sizing) :is(th, td):first-child { width: 26%; }
.meanings, .dangers { margin-top: 0.3rem; }
.meanings { columns: 2 22rem; column-gap: 1.6rem; font-size: 0.92em; }
dl > div { break-inside: avoid; margin-bottom: 0.3rem; }
dt { font-weight: 600; }
.datasheet :is(th, td) { padding-top: 0.1rem; padding-bottom: 0.1rem; }
.sizing .figure :is(th, td) { border-bottom: 0; }
.sizing .figure { break-after: avoid; }
.sizing tbody { break-inside: avoid; }
.sizing .how { padding: 0 0 0.3rem 1.2rem; }
.sizing .how > div { margin-top: 0.1rem; }
/* Drawings of one test beside each other. */
.drawings { display: grid; break-inside: avoid; grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 0 1.6rem; }
.drawings svg.drawing { width: 100%; }
.picture { display: block; width: 100%; max-height: 90mm; object-fit: contain; }
:is(.half, .heat, .states, .lines, .energy) { break-inside: avoid; }
.address { font-size: 0.9em; overflow-wrap: anywhere; }
a { color: inherit; }
pre { overflow-x: auto; margin: 0.5rem 0 0; font-size: 0.9em; white-space: pre-wrap; overflow-wrap: anywhere; }
@media print {
  .summary { font-size: 0.93rem; line-height: 1.27; }
  .summary h2 { margin-top: 0.6rem; }
  .summary h3 { margin-top: 0.5rem; }
  svg.drawing { width: 68%; }
  .screen-only { display: none; }
  details:not([open]) { display: none; }
}
`;

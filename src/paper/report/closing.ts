import { CAUTIONS } from '../../ui/cautions.ts';
import { fileName } from '../../ui/files.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { list, meaning } from '../paperParts.ts';
import { positioningMeanings } from './accuracySection.ts';
import { figureMeanings } from './answerSection.ts';
import type { ReportInput } from './reportInput.ts';
import { sizingNotes } from './sizingSection.ts';
import { moveDefinitions } from './tuningSection.ts';

/** What the figures take for granted, in plain words. */
export function assumptionSection({ verdict, candidates, study }: ReportInput): Markup {
  const included = [
    'Windings with resistance that rises as they warm, inductance, back-EMF and the limited voltage of the bus; saturation where a preset states it.',
    'Cogging, force ripple, attraction, eddy currents and hysteresis, as far as a drive has them.',
    'The stiffness between motor and table, the length of a screw, lost motion, friction of guide and nut with their breakaway.',
    'A sampled position loop with its delays, feedforward and filters; an encoder with counts, interpolation error and noise; a current loop; fold-back and trips of the amplifier.',
    'Heat in winding, carrier or housing, table and screw, and the growth that it causes at the tool.',
  ];
  const leftOut = [
    'Resonances beyond motor, link and table: of frame, cables, tool and floor. The base stands fixed.',
    'Angular errors of the guide, its straightness, and errors of the scale other than interpolation and warmth: positioning here is that of drive, loop and heat alone.',
    'Dead time of the amplifier, offsets of its current sensors, drift of the room, dirt, and ageing other than the wear stated above.',
    'Losses of the power supply, of a chiller and of the control; prices of machines and spare parts.',
  ];
  return markup`<section><h2>Assumptions</h2>
<p>Every figure is calculated or simulated, none is measured.</p>
<h3>The model has</h3>${list(included)}
<h3>The model leaves out</h3>${list(leftOut)}
<h3>The drives</h3>
${list([
  'The presets are invented for demonstration, plausible for their kind and size. They are not the data of any manufacturer. Type in the values of a real datasheet before a decision.',
  verdict.fairness,
  `Every candidate carries the same job in the same room (${study.job.values.cooling ? 'with' : 'without'} a coolant), on the same bus, for the same hours.`,
])}
<h3>What the figures of the comparison mean</h3>
${figureMeanings(verdict)}
<h3>What the figures of positioning mean</h3>
${positioningMeanings()}
<h3>Where the formulas of the sizing come from</h3>
${sizingNotes(candidates)}
<h3>How the figures of the moves are measured</h3>
${moveDefinitions()}</section>`;
}

export function cautionSection(): Markup {
  return markup`<section><h2>${CAUTIONS.title}</h2>
<p>${CAUTIONS.opening}</p>
<dl class="dangers">${CAUTIONS.dangers.map(([title, text]) => meaning(title, text))}</dl>
<p>${CAUTIONS.closing}</p></section>`;
}

/** The way back to the study: an address, and the file itself. */
export function reproductionSection({ study, link, studyFile, version }: ReportInput): Markup {
  const name = fileName(study.job.title, 'study.json');
  const data = `data:application/json;charset=utf-8,${encodeURIComponent(studyFile)}`;
  return markup`<section><h2>How to get these figures again</h2>
<p>Made by Waybench ${version}. The same version gives the same figures from the same study: its only random numbers come from a fixed seed.</p>
<p>Open the study by its address: <a class="address" href="${link}" target="_blank" rel="noopener">${link}</a></p>
<p class="screen-only">Or save the study and open it in Waybench: <a href="${data}" download="${name}">${name}</a></p>
<details><summary>The study as text, to be saved as ${name}</summary>
<pre>${studyFile}</pre></details></section>`;
}

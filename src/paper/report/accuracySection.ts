import { inUnit, ranged } from '../../../shared/core/format.ts';
import { figureText } from '../../../shared/figures/figure.ts';
import { INCREMENT_FIGURES, POSITIONING_FIGURES } from '../../../shared/figures/testFigures.ts';
import { tripText } from '../../../shared/figures/tripText.ts';
import type {
  Accuracy,
  IncrementTest,
  PositioningTest,
  RippleTest,
  TestResult,
  TrippedTest,
} from '../../../shared/protocol/accuracy.ts';
import type { Job, JobValues } from '../../../shared/study/job.ts';
import { ended } from '../../../shared/verdict/read.ts';
import { disturbanceChart } from '../../drawings/disturbance.ts';
import { incrementsChart } from '../../drawings/increments.ts';
import { positioningChart } from '../../drawings/positioning.ts';
import { rippleChart } from '../../drawings/ripple.ts';
import { spectrumChart } from '../../drawings/spectrum.ts';
import { staircaseChart } from '../../drawings/staircase.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { testRows } from '../../studyState/tables/accuracyRows.ts';
import { type TableRow, ungrouped } from '../../studyState/tables/table.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { figure, meanings, table } from '../paperParts.ts';
import { figureTable } from './figureTable.ts';
import { HALF } from './halfSize.ts';

const STATES: Readonly<Record<PositioningTest['state'], string>> = {
  cold: 'cold is as cold as the room',
  warm: 'warm as at the end of a day',
  worn: 'worn, with the backlash that wear adds, and warm',
};

const METRES = 'm';

/** How well the tool is where it should be. Drawings but those of positioning have one scale in all of `candidates`. */
export function accuracySection(
  { outcome: { accuracy } }: SimulatedCandidate,
  { values }: Job,
  candidates: readonly SimulatedCandidate[],
): Markup {
  const all = candidates.map(({ outcome }) => outcome.accuracy);
  const ripples = measured(all.map(({ ripple }) => ripple));
  const staircases = measured(all.map(({ staircase }) => staircase));
  const increments = measured(all.map(({ increment }) => increment));
  const disturbances = measured(all.map(({ disturbance }) => disturbance));
  return markup`<section><h3>Positioning after ISO 230-2</h3>${positioning(accuracy, values)}</section>
<section><h3>Scan at constant speed</h3>${tested(
    accuracy.ripple,
    (test) => markup`${figuresOf(testRows('ripple', [test], values))}
${strongestLines(test)}
<div class="drawings">${figure('Speed ripple along the way', rippleChart(test, values.rippleLimit, ripples, HALF))}
${figure('Spectrum of the speed ripple', spectrumChart(test, ripples, HALF))}</div>`,
  )}</section>
<section><h3>Staircase</h3>${tested(
    accuracy.staircase,
    (test) => markup`<div class="drawings"><div>${figuresOf(testRows('staircase', [test], values))}</div>
${figure('Stairs set and taken', staircaseChart(test, staircases, HALF))}</div>`,
  )}</section>
<section><h3>Smallest step</h3>${tested(
    accuracy.increment,
    (test) => markup`<div class="drawings"><div>${stepsTried(test)}</div>
${figure('Steps set and taken', incrementsChart(test, increments, HALF))}</div>`,
  )}</section>
<section><h3>Sudden force</h3>${tested(
    accuracy.disturbance,
    (test) => markup`<div class="drawings"><div>${figuresOf(testRows('disturbance', [test], values))}</div>
${figure('Deviation under the force', disturbanceChart(test, values.window, disturbances, HALF))}</div>`,
  )}</section>`;
}

/** A test as it is shown, or why it could not be ended. */
export function tested<T extends object>(result: TestResult<T>, show: (test: T) => Markup): Markup {
  const test = ended(result);
  return test === null ? notMeasured(result as TrippedTest) : show(test);
}

function notMeasured({ trip }: TrippedTest): Markup {
  return markup`<p>Not measured: the drive tripped. ${tripText(trip)}</p>`;
}

/** The tests that could be ended. */
export function measured<T extends object>(results: readonly TestResult<T>[]): T[] {
  return results.map(ended).filter((test) => test !== null);
}

function positioning({ positioning: results }: Accuracy, values: JobValues): Markup {
  const tests = measured(results);
  const trips = results.filter((result) => ended(result) === null) as TrippedTest[];
  const [first] = tests;
  if (first === undefined) return markup`${trips.map(notMeasured)}`;
  const columns = tests.map(({ state }) => ({ title: state }));
  const rows = testRows('positioning', tests, values);
  return markup`<div class="words"><p>Deviation of the tool from ${first.targets.length} targets, ${first.up[0]?.length ?? 0} approaches from either side, coverage factor 2: ${tests.map(({ state }) => STATES[state]).join(', ')}. Drawings of positioning have a scale of their own; all others have the same scale in every candidate.</p></div>
${figureTable(ungrouped(columns, rows), { kind: 'states' })}${trips.map(notMeasured)}
<div class="drawings">${tests.map((test) => figure(`Deviation from the targets, ${test.state}`, positioningChart(test, [test], HALF)))}</div>`;
}

/** What is meant by each figure of positioning. */
export function positioningMeanings(): Markup {
  return meanings(Object.values(POSITIONING_FIGURES));
}

function figuresOf(rows: readonly TableRow[]): Markup {
  return figureTable(ungrouped([{ title: 'Value' }], rows), { kind: 'figures', meaning: 'beside' });
}

function strongestLines({ lines }: RippleTest): Markup {
  if (lines.length === 0) return markup``;
  const rows = lines.map(
    ({
      period,
      amplitude,
      cause,
    }) => markup`<tr><th scope="row">${ranged(period, METRES)}</th><td>${inUnit(amplitude, '%')}</td><td>${cause ?? 'no single term of the model has this period'}</td></tr>
`,
  );
  return table('lines', ['Strongest lines: period', 'Amplitude', 'Where it comes from'], rows);
}

function stepsTried(test: IncrementTest): Markup {
  const { smallest } = INCREMENT_FIGURES;
  const rows = test.tried.map(
    ({
      step,
      mean,
      spread,
      made,
    }) => markup`<tr><th scope="row">${ranged(step, METRES)}</th><td>${ranged(mean, METRES)}</td><td>${ranged(spread, METRES)}</td><td>${made ? 'yes' : 'no'}</td></tr>
`,
  );
  return markup`<div class="words"><p>${smallest.label}: ${figureText(smallest, smallest.of(test))}.</p></div>
${table('half steps', ['Step commanded', 'Taken, mean', 'Its spread', 'Every time'], rows)}`;
}

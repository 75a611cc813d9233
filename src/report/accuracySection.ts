import { inUnit, ranged } from '../../shared/format.ts';
import type {
  Accuracy,
  DisturbanceTest,
  IncrementTest,
  PositioningFigures,
  PositioningTest,
  RippleTest,
  StaircaseTest,
  TestResult,
  TrippedTest,
} from '../../shared/study/accuracy.ts';
import type { Job } from '../../shared/study/job.ts';
import { ended } from '../../shared/verdict/read.ts';
import { disturbanceChart } from '../drawing/charts/disturbance.ts';
import { incrementsChart } from '../drawing/charts/increments.ts';
import { positioningChart } from '../drawing/charts/positioning.ts';
import { rippleChart } from '../drawing/charts/ripple.ts';
import { spectrumChart } from '../drawing/charts/spectrum.ts';
import { staircaseChart } from '../drawing/charts/staircase.ts';
import { type Markup, markup } from '../drawing/markup.ts';
import type { Size } from '../drawing/plot.ts';
import { figure, figureRow, table } from '../paper/paperParts.ts';
import type { SimulatedLane } from '../study/simulatedLane.ts';
import { halvedTable } from './halvedTable.ts';

const POSITIONING: readonly (readonly [label: string, keyof PositioningFigures & string])[] = [
  ['Accuracy A, both directions', 'accuracy'],
  ['Accuracy A↑', 'accuracyUp'],
  ['Accuracy A↓', 'accuracyDown'],
  ['Repeatability R, both directions', 'repeatability'],
  ['Repeatability R↑', 'repeatabilityUp'],
  ['Repeatability R↓', 'repeatabilityDown'],
  ['Systematic error E, both directions', 'systematic'],
  ['Systematic error E↑', 'systematicUp'],
  ['Systematic error E↓', 'systematicDown'],
  ['Range M of the mean', 'meanRange'],
  ['Reversal error B', 'reversal'],
  ['Reversal error, mean', 'meanReversal'],
];

const STATES: Readonly<Record<PositioningTest['state'], string>> = {
  cold: 'cold is as cold as the room',
  warm: 'warm as at the end of a day',
  worn: 'worn with the backlash that wear adds, warm too',
};

const METRES = 'm';

/** Lower than on the page, so that a test and its drawing stand on one sheet. */
const LOW: Size = { width: 640, height: 220 };

/** How well the tool is where it should be. Drawings but those of positioning have one scale in all of `lanes`. */
export function accuracySection(
  { outcome: { accuracy } }: SimulatedLane,
  { values }: Job,
  lanes: readonly SimulatedLane[],
): Markup {
  const all = lanes.map(({ outcome }) => outcome.accuracy);
  const ripples = measured(all.map(({ ripple }) => ripple));
  const staircases = measured(all.map(({ staircase }) => staircase));
  const increments = measured(all.map(({ increment }) => increment));
  const disturbances = measured(all.map(({ disturbance }) => disturbance));
  return markup`<section><h3>Positioning after ISO 230-2</h3>${positioning(accuracy)}</section>
<section><h3>Speed ripple of the scan</h3>${tested(
    accuracy.ripple,
    (test) => markup`${ripple(test)}
${figure('Speed ripple along the way', rippleChart(test, values.rippleLimit, ripples, LOW))}
${figure('Spectrum of the speed ripple', spectrumChart(test, ripples))}`,
  )}</section>
<section><h3>Staircase</h3>${tested(
    accuracy.staircase,
    (test) => markup`${staircase(test)}
${figure('Stairs set and taken', staircaseChart(test, staircases, LOW))}`,
  )}</section>
<section><h3>Smallest step</h3>${tested(
    accuracy.increment,
    (test) => markup`${increment(test)}
${figure('Steps set and taken', incrementsChart(test, increments, LOW))}`,
  )}</section>
<section><h3>A force that comes at once</h3>${tested(
    accuracy.disturbance,
    (test) => markup`${disturbance(test)}
${figure('Deviation under the force', disturbanceChart(test, values.window, disturbances, LOW))}`,
  )}</section>`;
}

/** A test as it is shown, or why it could not be ended. */
export function tested<T extends object>(result: TestResult<T>, show: (test: T) => Markup): Markup {
  const test = ended(result);
  return test === null ? notMeasured(result as TrippedTest) : show(test);
}

function notMeasured({ trip }: TrippedTest): Markup {
  return markup`<p>Not measured: the drive stopped itself. ${trip.message}</p>`;
}

/** The tests that could be ended. */
export function measured<T extends object>(results: readonly TestResult<T>[]): T[] {
  return results.map(ended).filter((test) => test !== null);
}

function positioning({ positioning: results }: Accuracy): Markup {
  const tests = measured(results);
  const trips = results.filter((result) => ended(result) === null) as TrippedTest[];
  const [first] = tests;
  if (first === undefined) return markup`${trips.map(notMeasured)}`;
  const rows = POSITIONING.map(
    ([
      label,
      name,
    ]) => markup`<tr><th scope="row">${label}</th>${tests.map(({ figures }) => markup`<td>${ranged(figures[name] as number, METRES)}</td>`)}</tr>
`,
  );
  return markup`<div class="words"><p>Deviation of the tool from ${first.targets.length} targets, ${first.up[0]?.length ?? 0} approaches from either side, coverage factor 2: ${tests.map(({ state }) => STATES[state]).join(', ')}. Drawings of positioning have a scale of their own; all others have the same scale in every lane.</p></div>
${table('states', ['Figure', ...tests.map(({ state }) => state)], rows)}${trips.map(notMeasured)}
${tests.map((test) => figure(`Deviation from the targets, ${test.state}`, positioningChart(test)))}`;
}

function ripple({ speed, length, peak, rms, lines }: RippleTest): Markup {
  const figures = [
    figureRow(
      'Ripple, peak',
      inUnit(peak, '%'),
      `Half of peak to peak over the set speed, on ${ranged(length, METRES)} at ${ranged(speed, 'm/s')}.`,
    ),
    figureRow('Ripple, RMS', inUnit(rms, '%'), 'Root of the mean square over the set speed.'),
  ];
  const rows = lines.map(
    ({
      period,
      amplitude,
      cause,
    }) => markup`<tr><th scope="row">${ranged(period, METRES)}</th><td>${inUnit(amplitude, '%')}</td><td>${cause ?? 'no single term of the model has this period'}</td></tr>
`,
  );
  return markup`${table('figures', ['Figure', 'Value', 'Meaning'], figures)}
${lines.length === 0 ? '' : table('lines', ['Strongest lines: period', 'Amplitude', 'Where it comes from'], rows)}`;
}

function staircase({ step, largestError, noise }: StaircaseTest): Markup {
  return table(
    'figures',
    ['Figure', 'Value', 'Meaning'],
    [
      figureRow(
        'Largest error of a stair',
        ranged(largestError, METRES),
        `Mean of the tool on a stair against its set height; stairs of ${ranged(step, METRES)}.`,
      ),
      figureRow(
        'Noise while standing',
        ranged(noise, METRES),
        'Root of the mean square about the mean of the stair.',
      ),
    ],
  );
}

function increment({ smallest, tried }: IncrementTest): Markup {
  const rows = tried.map(
    ({
      step,
      mean,
      spread,
      made,
    }) => markup`<tr><th scope="row">${ranged(step, METRES)}</th><td>${ranged(mean, METRES)}</td><td>${ranged(spread, METRES)}</td><td>${made ? 'yes' : 'no'}</td></tr>
`,
  );
  return markup`<div class="words"><p>${smallest === null ? 'None of the steps tried is taken for certain.' : `The smallest step that the tool takes for certain is ${ranged(smallest, METRES)}.`}</p></div>
${halvedTable('steps', ['Step set', 'Taken, mean', 'Its spread', 'For certain'], rows)}`;
}

function disturbance({ force, peak, stiffness, recovery }: DisturbanceTest): Markup {
  return table(
    'figures',
    ['Figure', 'Value', 'Meaning'],
    [
      figureRow(
        'Largest deviation',
        ranged(peak, METRES),
        `Of the table, when ${ranged(force, 'N')} comes at once and stays.`,
      ),
      figureRow('Dynamic stiffness', ranged(stiffness, 'N/m'), 'Force over that deviation.'),
      figureRow(
        'Recovery',
        recovery === null ? 'none' : ranged(recovery, 's'),
        'Until the following error stays in the window.',
      ),
    ],
  );
}

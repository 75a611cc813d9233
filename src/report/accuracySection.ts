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
import { type Markup, markup } from '../drawing/markup.ts';
import { figureRow, table } from '../paper/paperParts.ts';
import type { SimulatedLane } from './reportInput.ts';

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

const METRES = 'm';

export function accuracySection({ outcome: { accuracy } }: SimulatedLane): Markup {
  return markup`<section><h3>Positioning after ISO 230-2</h3>${positioning(accuracy)}</section>
<section><h3>Speed ripple of the scan</h3>${tested(accuracy.ripple, ripple)}</section>
<section><h3>Staircase</h3>${tested(accuracy.staircase, staircase)}</section>
<section><h3>Smallest step</h3>${tested(accuracy.increment, increment)}</section>
<section><h3>A force that comes at once</h3>${tested(accuracy.disturbance, disturbance)}</section>`;
}

/** A test as it is shown, or why it could not be ended. */
export function tested<T extends object>(result: TestResult<T>, show: (test: T) => Markup): Markup {
  if (isTripped(result)) return markup`<p>Not measured: the drive stopped itself. ${result.trip.message}</p>`;
  return show(result);
}

function isTripped(result: object): result is TrippedTest {
  return 'trip' in result;
}

function positioning({ positioning: results }: Accuracy): Markup {
  const tests = results.filter((result): result is PositioningTest => !isTripped(result));
  const trips = results
    .filter(isTripped)
    .map(({ trip }) => markup`<p>One state was not measured: the drive stopped itself. ${trip.message}</p>`);
  if (tests.length === 0) return markup`${trips}`;
  const [{ targets, up }] = tests as [PositioningTest];
  const rows = POSITIONING.map(
    ([
      label,
      name,
    ]) => markup`<tr><th scope="row">${label}</th>${tests.map(({ figures }) => markup`<td>${ranged(figures[name] as number, METRES)}</td>`)}</tr>
`,
  );
  return markup`<div class="words"><p>Deviation of the tool from ${targets.length} targets, ${up[0]?.length ?? 0} approaches from either side, as cold as the room, as warm as at the end of a day, and worn as far as the drive has what wears. Coverage factor 2.</p></div>
${table('states', ['', ...tests.map(({ state }) => state)], rows)}${trips}`;
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
${table('steps', ['Step commanded', 'Step made, mean', 'Its spread', 'Taken for certain'], rows)}`;
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

import { inUnit, ranged } from '../../../shared/core/format.ts';
import { type UnitSystem, unitIn } from '../../../shared/core/units.ts';
import { tripText } from '../../../shared/figures/tripText.ts';
import type {
  Accuracy,
  PositioningTest,
  TestResult,
  TrippedTest,
} from '../../../shared/protocol/accuracy.ts';
import type { JobValues } from '../../../shared/study/job.ts';
import { ended } from '../../../shared/verdict/read.ts';
import { disturbanceChart } from '../../drawings/disturbance.ts';
import { energyFlowChart } from '../../drawings/energyFlow.ts';
import { incrementsChart } from '../../drawings/increments.ts';
import { positioningChart } from '../../drawings/positioning.ts';
import { rippleChart } from '../../drawings/ripple.ts';
import { spectrumChart } from '../../drawings/spectrum.ts';
import { staircaseChart } from '../../drawings/staircase.ts';
import type { Size } from '../../plot/svg/plot.ts';
import {
  DISTURBANCE_ROWS,
  INCREMENT_ROWS,
  POSITIONING_ROWS,
  RIPPLE_ROWS,
  STAIRCASE_ROWS,
  type TestRow,
} from '../../studyState/accuracyRows.ts';
import { energyRows } from '../../studyState/energyRows.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { candidateFigure, candidateTable } from './candidateTable.ts';
import { columns, columnsFor } from './columns.ts';
import { unitNote } from './drawnPart.ts';

/** What is looked at, and how. */
export interface Look {
  readonly candidates: readonly SimulatedCandidate[];
  readonly job: JobValues;
  readonly units: UnitSystem;
  readonly state: PositioningTest['state'];
  /** All candidates on one scale, or each on its own. */
  readonly oneScale: boolean;
  /** px of a drawing. */
  readonly width: number;
}

/** Narrowest column of a chart, px of a drawing. */
const MIN = 315;
const MIN_FLOW = 430;

export const SECTIONS: Readonly<Record<string, (look: Look) => Markup>> = {
  Positioning: positioning,
  Staircase: (look) =>
    section(look, {
      label:
        'Stairs up and down, each held for a while: what the tool makes of the smallest motions. Dashed: as set.',
      results: of(look, 'staircase'),
      rows: STAIRCASE_ROWS,
      drawings: [{ height: 250, draw: staircaseChart }],
    }),
  Scan: (look) =>
    section(look, {
      label: `A scan at constant speed. At most ${inUnit(look.job.rippleLimit, '%')} of ripple is allowed. Every term of the model that repeats along the axis has its own period: the spectrum tells where the ripple comes from.`,
      results: of(look, 'ripple'),
      rows: RIPPLE_ROWS,
      drawings: [
        { height: 250, draw: (test, among, size) => rippleChart(test, look.job.rippleLimit, among, size) },
        { height: 360, draw: spectrumChart },
      ],
    }),
  'Smallest step': (look) =>
    section(look, {
      label:
        'Smaller and smaller steps. Full dots are taken for certain, open ones are not; bars are ± twice the standard deviation; the dotted line is where a step taken is the step set.',
      results: of(look, 'increment'),
      rows: INCREMENT_ROWS,
      drawings: [{ height: 250, draw: incrementsChart }],
    }),
  'Sudden force': (look) =>
    section(look, {
      label: `A force on the table that comes at once and stays. The band is the window of the job, ±${ranged(look.job.window, unitIn(look.units, 'µm'))}.`,
      results: of(look, 'disturbance'),
      rows: DISTURBANCE_ROWS,
      drawings: [
        { height: 250, draw: (test, among, size) => disturbanceChart(test, look.job.window, among, size) },
      ],
    }),
  Energy: energy,
};

function of<K extends Exclude<keyof Accuracy, 'positioning'>>({ candidates }: Look, name: K): Accuracy[K][] {
  return candidates.map(({ outcome }) => outcome.accuracy[name]);
}

interface Section<T> {
  readonly label: string;
  /** One for each candidate; null where there is none to be had. */
  readonly results: readonly (TestResult<T> | null)[];
  readonly rows: readonly TestRow<T>[];
  readonly drawings: readonly {
    readonly height: number;
    readonly draw: (test: T, among: readonly T[] | undefined, size: Size) => Markup;
  }[];
}

/** Drawings of all candidates beside each other, and their figures below. */
function section<T extends object>(
  look: Look,
  { label, results, rows, drawings }: Section<T>,
  min = MIN,
): Markup {
  const { candidates, job, units, width, oneScale } = look;
  const tests = results.map((result) => result && ended(result));
  const all = tests.filter((test) => test !== null);
  const beside = columnsFor(candidates.length, width, min);
  const scale = oneScale
    ? 'All drives are drawn to one scale.'
    : 'Each drive is drawn to its own scale: read the axes.';
  const drawn = drawings.map(({ height, draw }) =>
    columns(
      beside,
      width,
      candidates.map((candidate, k) => (each) => {
        const test = tests[k]!;
        const content = test
          ? draw(test, oneScale ? all : undefined, { width: each, height })
          : markup`<p>${whyNot(results[k]!, units)}</p>`;
        return candidateFigure(candidate, content);
      }),
    ),
  );
  const table = candidateTable(
    'Figures',
    candidates,
    rows.map(({ id, label, definition, text, fails }) => ({
      id,
      label,
      definition,
      cells: tests.map((test) =>
        test ? { text: text(test, units), fails: fails?.(test, job) ?? false } : { text: 'trips' },
      ),
    })),
  );
  return markup`<p class="results-words">${label} ${candidates.length > 1 ? scale : ''}${unitNote(units)}</p>
${drawn}
${rows.length > 0 ? table : ''}`;
}

function whyNot(result: TestResult<object> | null, units: UnitSystem): string {
  return result === null
    ? 'This state was not tested.'
    : `The drive stopped itself: ${tripText((result as TrippedTest).trip, units)}`;
}

const STATES: readonly PositioningTest['state'][] = ['cold', 'warm', 'worn'];

const STATE_TEXT: Readonly<Record<PositioningTest['state'], string>> = {
  cold: 'Everything is as cold as the room.',
  warm: 'Everything is as warm as at the end of a day.',
  worn: 'As warm as at the end of a day, and with the backlash that wear adds to a nut. Without a nut nothing wears: such drives are shown as they are when warm.',
};

function positioning(look: Look): Markup {
  const { state } = look;
  return section(look, {
    label: `${STATE_TEXT[state]} Every target is approached several times from both sides: full dots and the solid line in +x, open dots and the dashed line in −x; bars are the mean ± twice the standard deviation s.`,
    results: look.candidates.map(({ outcome }) => inState(outcome.accuracy, state)),
    rows: POSITIONING_ROWS,
    drawings: [{ height: 300, draw: positioningChart }],
  });
}

/** The results stand in the order of the states. What cannot wear is the same when worn as it is when warm. */
function inState(
  { positioning: results }: Accuracy,
  state: PositioningTest['state'],
): TestResult<PositioningTest> | null {
  const place = Math.min(STATES.indexOf(state), Math.max(results.length - 1, 0));
  return results[place] ?? null;
}

function energy(look: Look): Markup {
  const { candidates, job } = look;
  const results = of(look, 'energy');
  const flows = section(
    look,
    {
      label: `Where the energy of a cycle goes: bands are as wide as the energies, in % of what is drawn.`,
      results,
      rows: [],
      drawings: [{ height: 280, draw: energyFlowChart }],
    },
    MIN_FLOW,
  );
  return markup`${flows}
${candidateTable('Figures', candidates, energyRows(candidates, results.map(ended), job))}`;
}

import { inUnit, ranged } from '../../../shared/core/format.ts';
import { tripText } from '../../../shared/figures/tripText.ts';
import type {
  Accuracy,
  PositioningTest,
  TestResult,
  TrippedTest,
} from '../../../shared/protocol/accuracy.ts';
import type { Job } from '../../../shared/study/job.ts';
import { ended } from '../../../shared/verdict/read.ts';
import { disturbanceChart } from '../../drawings/disturbance.ts';
import { energyFlowChart } from '../../drawings/energyFlow.ts';
import { incrementsChart } from '../../drawings/increments.ts';
import { positioningChart } from '../../drawings/positioning.ts';
import { rippleChart } from '../../drawings/ripple.ts';
import { spectrumChart } from '../../drawings/spectrum.ts';
import { staircaseChart } from '../../drawings/staircase.ts';
import type { Drawing } from '../../plot/drawing.ts';
import type { Size } from '../../plot/frame.ts';
import type { SimulatedCandidate } from '../../studyState/simulatedCandidate.ts';
import { testRows } from '../../studyState/tables/accuracyRows.ts';
import { energyRows, yearRows } from '../../studyState/tables/energyRows.ts';
import type { TableRow } from '../../studyState/tables/table.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { candidateFigure } from '../parts/candidateFigure.ts';
import { columns, columnsFor } from '../parts/columns.ts';

/** What is looked at, and how. */
export interface Look {
  readonly candidates: readonly SimulatedCandidate[];
  readonly job: Job;
  readonly state: PositioningTest['state'];
  /** All candidates on one scale, or each on its own. */
  readonly oneScale: boolean;
}

/** One test of all candidates: its drawings beside each other, and its figures. */
interface Section {
  /** `width` in px of a drawing. */
  drawings(look: Look, width: number): Markup;
  rows(look: Look): TableRow[];
}

/** Narrowest column of a chart, px of a drawing. */
const MIN = 315;
const MIN_FLOW = 430;

export type SectionName = 'Positioning' | 'Staircase' | 'Scan' | 'Smallest step' | 'Sudden force' | 'Energy';

export const SECTIONS: Readonly<Record<SectionName, Section>> = {
  Positioning: {
    drawings: (look, width) =>
      drawn(look, width, {
        text: `${STATE_TEXT[look.state]} Every target is approached several times from both directions: full dots and the solid line in +x, open dots and the dashed line in −x; bars are the mean ± twice the standard deviation s.`,
        results: positioning(look),
        charts: [{ height: 300, draw: positioningChart }],
      }),
    rows: (look) =>
      testRows(
        'positioning',
        positioning(look).map((result) => result && ended(result)),
        look.job.values,
      ),
  },

  Staircase: {
    drawings: (look, width) =>
      drawn(look, width, {
        text: 'Steps up and down, each held for a while: the response of the tool to the smallest motions. Dashed: as commanded.',
        results: resultsOf(look, 'staircase'),
        charts: [{ height: 250, draw: staircaseChart }],
      }),
    rows: (look) => testRows('staircase', resultsOf(look, 'staircase').map(ended), look.job.values),
  },

  Scan: {
    drawings: (look, width) =>
      drawn(look, width, {
        text: `A scan at constant speed. ${look.job.values.rippleLimit > 0 ? `At most ${inUnit(look.job.values.rippleLimit, '%')} of ripple is allowed.` : 'The job does not require one: nothing here decides.'} Every periodic disturbance in the model has its own period along the axis, so the spectrum shows where the ripple comes from.`,
        results: resultsOf(look, 'ripple'),
        charts: [
          {
            height: 250,
            draw: (test, among, size) => rippleChart(test, look.job.values.rippleLimit, among, size),
          },
          { height: 360, draw: spectrumChart },
        ],
      }),
    rows: (look) => testRows('ripple', resultsOf(look, 'ripple').map(ended), look.job.values),
  },

  'Smallest step': {
    drawings: (look, width) =>
      drawn(look, width, {
        text: 'Steps of decreasing size. Full dots: made every time; open dots: not every time; bars are ± twice the standard deviation; dotted line: step made equals step commanded.',
        results: resultsOf(look, 'increment'),
        charts: [{ height: 250, draw: incrementsChart }],
      }),
    rows: (look) => testRows('increment', resultsOf(look, 'increment').map(ended), look.job.values),
  },

  'Sudden force': {
    drawings: (look, width) => {
      const { window } = look.job.values;
      return drawn(look, width, {
        text: `A force step on the table. The band is the window of the job, ±${ranged(window, 'µm')}.`,
        results: resultsOf(look, 'disturbance'),
        charts: [{ height: 250, draw: (test, among, size) => disturbanceChart(test, window, among, size) }],
      });
    },
    rows: (look) => testRows('disturbance', resultsOf(look, 'disturbance').map(ended), look.job.values),
  },

  Energy: {
    drawings: (look, width) =>
      drawn(look, width, {
        text: 'Where the energy of a cycle goes: bands are as wide as the energies, in % of what is drawn.',
        results: resultsOf(look, 'energy'),
        charts: [{ height: 280, draw: energyFlowChart }],
        min: MIN_FLOW,
      }),
    rows: (look) => [
      ...energyRows(resultsOf(look, 'energy').map(ended)),
      ...yearRows(look.candidates, look.job),
    ],
  },
};

function resultsOf<K extends Exclude<keyof Accuracy, 'positioning'>>(
  { candidates }: Look,
  name: K,
): Accuracy[K][] {
  return candidates.map(({ outcome }) => outcome.accuracy[name]);
}

interface Drawn<T> {
  readonly text: string;
  /** One for each candidate; null where there is none to be had. */
  readonly results: readonly (TestResult<T> | null)[];
  readonly charts: readonly {
    readonly height: number;
    readonly draw: (test: T, among: readonly T[] | undefined, size: Size) => Drawing;
  }[];
  /** Narrowest column, px of a drawing. */
  readonly min?: number;
}

function drawn<T extends object>(
  { candidates, oneScale }: Look,
  width: number,
  { text, results, charts, min = MIN }: Drawn<T>,
): Markup {
  const all = results.map((result) => result && ended(result)).filter((test) => test !== null);
  const scale = oneScale ? 'All drives share one scale.' : 'Each drive has its own scale: read the axes.';
  const rows = charts.map(({ height, draw }) =>
    columns(
      columnsFor(candidates.length, width, min),
      width,
      candidates.map((candidate, k) => (each) => {
        const result = results[k] ?? null;
        const test = result && ended(result);
        const content = test
          ? draw(test, oneScale ? all : undefined, { width: each, height })
          : whyNot(result);
        return candidateFigure(candidate, content);
      }),
    ),
  );
  return markup`<p class="results-words">${text} ${candidates.length > 1 ? scale : ''}</p>
${rows}`;
}

function whyNot(result: TestResult<object> | null): string {
  return result === null
    ? 'This state was not tested.'
    : `The drive tripped: ${tripText((result as TrippedTest).trip)}`;
}

const STATES: readonly PositioningTest['state'][] = ['cold', 'warm', 'worn'];

const STATE_TEXT: Readonly<Record<PositioningTest['state'], string>> = {
  cold: 'Every part is at room temperature.',
  warm: 'Every part is as warm as at the end of a day.',
  worn: 'As warm as at the end of a day, with the backlash that wear adds to a nut. Drives without a nut do not wear: they are shown warm.',
};

/** The results stand in the order of the states. What cannot wear is the same when worn as it is when warm. */
function positioning({ candidates, state }: Look): (TestResult<PositioningTest> | null)[] {
  return candidates.map(({ outcome }) => {
    const { positioning: results } = outcome.accuracy;
    return results[Math.min(STATES.indexOf(state), Math.max(results.length - 1, 0))] ?? null;
  });
}

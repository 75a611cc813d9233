import { grouped } from '../../../shared/core/format.ts';
import { VERSION_TEXT } from '../../../shared/core/version.ts';
import { Dialog } from '../../ui/dialog.ts';
import { element } from '../../ui/dom.ts';

interface RandomRun {
  readonly count: number;
  readonly failures: readonly string[];
}

/** Scenes that ran for long, SI, and the page that was tuned for long. */
interface SoakRun {
  readonly scenes: number;
  readonly seconds: number;
  readonly hours: number;
  readonly cycles: number;
  readonly heapGrowth: number;
  /** Share of the settling window. */
  readonly drift: number;
  readonly residual: number;
  readonly page: { readonly minutes: number; readonly rounds: number };
  readonly failures: readonly string[];
}

/** What came of the last full run of the suite, by folder, of the last long run with random input and of the last endurance run, as the repository has them. */
declare const __TESTS__: {
  readonly suite: { readonly passed: Readonly<Record<string, number>>; readonly failed: number };
  readonly random: Readonly<Record<'scenes' | 'mutations' | 'jobs' | 'deeds' | 'faults', RandomRun>>;
  readonly soak: SoakRun;
};

/** What each folder of checks compares with. */
const KINDS: readonly (readonly [folder: string, label: string, against: string])[] = [
  ['outside', 'Published values', 'figures, tables and closed formulas from outside the program'],
  ['reference', 'A second program', 'the same axis written in another language from the equations alone'],
  ['practice', 'Facts of the trade', 'common practice, no source; where one does not hold, the test says so'],
  [
    'workers',
    'The simulation',
    'energy, symmetry, limits, convergence, and the same run at other step sizes',
  ],
  ['scenes', 'Scenes and lessons', 'each claim of a lesson against what its own run measures'],
  [
    'shared',
    'Rules and files',
    'hand calculations, random legal and illegal input, files of earlier versions',
  ],
  ['src', 'Parts of the page', 'what they draw, write and keep'],
  [
    'fuzz',
    'Random input',
    'random machines and jobs, and damaged files: each either runs or is refused with a reason',
  ],
  ['soak', 'Endurance', 'memory, drift and energy account over long runs of scenes and page'],
  ['e2e', 'The built page', 'what a person does and sees in a browser, also without a network'],
];

const SOURCES = [
  'Friction: Canudas de Wit, Olsson, Åström and Lischinsky, IEEE Trans. Automatic Control 40 (1995), Table I and the experiments of section III',
  'Filters: test values of SciPy for notches and the bilinear transform, eight to twelve digits',
  'Margins of loops: test values of python-control',
  'Stiff integration: Test Set for IVP Solvers of Mazzia and Magherini',
  'Positioning to ISO 230-2: a published measurement of a real axis with its evaluation; formulas from memory',
  'Thermal classes: IEC 60085; permissible rise: IEC 60034-1, from memory',
  'The whole axis, with each type of drive, while it accelerates, brakes and stands still: SciPy’s Radau solver at a relative tolerance of 1e-10',
];

const UNCHECKED = [
  'No run was compared with a machine on which force, current and position were recorded together.',
  'Presets, prices and times between failures are invented; no test can confirm them.',
  'What the model leaves out is listed in the report under Assumptions and no test covers it.',
  'Where Firefox is installed, the tests open the page in it, make moves and tune; other browsers not built on Chromium are not tested.',
];

function soakText({
  scenes,
  seconds,
  hours,
  cycles,
  heapGrowth,
  drift,
  residual,
  page,
  failures,
}: SoakRun): string {
  return (
    `The last endurance run: ${scenes} scenes for at least ${grouped(seconds)} s each (${grouped(cycles)} cycles), ${hours} h of the duty of each as ` +
    `time-lapse, and the page in use for ${page.minutes} min (${grouped(page.rounds)} rounds of tuning, pretuning and changing views). The memory of ` +
    `the simulation grew by ${grouped(Math.max(Math.ceil(heapGrowth / 1000), 0))} kB at most, the mean following error of a cycle moved by ` +
    `${(100 * drift).toPrecision(1)} % of the settling window at most, the energy account was off by ${(1e6 * residual).toPrecision(1)} millionths of ` +
    `the throughput at most. ${failures.length > 0 ? `What failed: ${failures.join('; ')}.` : 'On the page neither memory nor nodes, listeners or workers grew.'}`
  );
}

/** What the product is checked against, how often, and what is not checked. */
export function createTested(): Dialog {
  const { suite, random, soak } = __TESTS__;
  const passed = Object.values(suite.passed).reduce((sum, count) => sum + count, 0);
  const list = (texts: readonly string[]) =>
    element('ul', {}, ...texts.map((text) => element('li', {}, text)));
  const row = ([folder, label, against]: (typeof KINDS)[number]) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row' }, label),
      element('td', {}, String(suite.passed[folder] ?? 0)),
      element('td', {}, against),
    );
  return new Dialog({ title: 'How this is tested', class: 'wide' }).fill(
    element(
      'p',
      {},
      `Waybench ${VERSION_TEXT}. In the last full run on record, ${grouped(passed)} checks passed and ${grouped(suite.failed)} failed.`,
    ),
    element(
      'table',
      { class: 'dialog-table' },
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          ...['Kind', 'Checks', 'Compared with'].map((text) => element('th', { scope: 'col' }, text)),
        ),
      ),
      element('tbody', {}, ...KINDS.map(row)),
    ),
    element(
      'p',
      {},
      `The last long run with random input: ${grouped(random.scenes.count)} machines, ${grouped(random.mutations.count)} damaged files, ` +
        `${grouped(random.jobs.count)} jobs, ${grouped(random.deeds.count)} keys and presses on the page and ` +
        `${grouped(random.faults.count)} workers that failed at a random instant of a task; ` +
        `${grouped(Object.values(random).reduce((sum, { failures }) => sum + failures.length, 0))} failed.`,
    ),
    element('p', {}, soakText(soak)),
    element('h3', {}, 'Published sources'),
    list(SOURCES),
    element('h3', {}, 'Not checked'),
    list(UNCHECKED),
  );
}

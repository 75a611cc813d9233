/**
 * `npm run bench`: what the product costs, as ratios measured in one run, each beside the one of the run before. Appends a line to
 * `tests/benchmarks/history.jsonl` and writes the table of the README; `-- --try` leaves both alone. `-- --long` watches memory for half an hour.
 */
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { argv, versions } from 'node:process';
import { Figures } from '../benchmarks/figures.mjs';
import { firstAnswers } from '../benchmarks/firstAnswers.mjs';
import { readHistory, remember } from '../benchmarks/history.mjs';
import { pagePace } from '../benchmarks/page/pagePace.mjs';
import { FIRST_LOAD, scriptSizes } from '../benchmarks/page/pageSize.mjs';
import { studyWaits } from '../benchmarks/page/studyWaits.mjs';
import { bundle } from './bundle.mjs';
import { ROOT } from './sources.mjs';

const NATIVE = join(ROOT, 'tests/benchmarks/native');

const minutes = argv.includes('--long') ? [1, 10, 20, 30] : [1, 2];
const [load = 0] = loadavg();
const figures = new Figures(readHistory().at(-1)?.figures ?? {});

const chromium = await page();
const cPace = await engines();
await stiffSolvers();
await growing();
await answers();
await analysis();
await timeLapse();

const { WAYBENCH_VERSION: product, MODEL_VERSION: model } = await bundle('shared/core/version.ts');
const [{ model: processor }, ...others] = cpus();
const line = {
  date: new Date().toISOString().slice(0, 10),
  machine: { cores: others.length + 1, processor, load: Number(load.toFixed(1)) },
  versions: { node: versions.node, chromium, product, model },
  figures: figures.values,
  missing: figures.missing,
};
console.log(
  `\n${processor}, ${line.machine.cores} threads, load average ${line.machine.load} before the run`,
);
console.log(`Node ${versions.node}; Chromium ${chromium}; Waybench ${product}, model ${model}`);
if (!argv.includes('--try')) remember(line);

/** Returns the pace of the program in C on the opening scene, simulated seconds a second of the processor; null where there is no compiler. */
async function engines() {
  const { enginePace } = await bundle('tests/benchmarks/enginePace.ts');
  figures.heading(
    'Engines: pace of the processor over that of the same axis in C, -O3, two Runge-Kutta steps a period; and over real time',
  );
  const paces = enginePace(NATIVE);
  for (const { name, live, batch, native, apart } of paces) {
    if (native !== null) {
      figures.add(`live over C: ${name}`, live / native, '×', 'more');
      const ends = `C ends ${(1e9 * apart).toPrecision(1)} nm beside batch`;
      figures.add(`batch over C: ${name}`, batch / native, '×', 'more', ends);
    }
    figures.add(`batch over live: ${name}`, batch / live, '×', 'more');
    figures.note(`live over real time: ${name}`, `${live.toFixed(1)} ×`, '');
  }
  if (paces[0].native === null)
    for (const name of ['live over C', 'batch over C'])
      figures.leaveOut(name, 'no C compiler on that system');
  return paces.find(({ name }) => name === 'mould-shuttle').native;
}

async function stiffSolvers() {
  const { stiffPace } = await bundle('tests/benchmarks/stiffPace.ts');
  figures.heading('Stiff solvers of SciPy in place of the fixed steps in C, opening scene');
  const paces = stiffPace(NATIVE);
  for (const { method, overC, evaluations, apart } of paces ?? []) {
    const remark = `${evaluations.toFixed(0)} evaluations a period; ends ${(1e9 * apart).toPrecision(1)} nm beside batch`;
    figures.add(`${method} over C`, overC, '×', 'more', remark);
  }
  if (!paces)
    for (const method of ['LSODA', 'Radau'])
      figures.leaveOut(`${method} over C`, 'no C compiler or no SciPy on that system');
}

async function growing() {
  const { growth, besideCost } = await bundle('tests/benchmarks/growth.ts');
  figures.heading('Cost of more: processor time over that of one motor without resonances, batch engine');
  for (const { name, cost } of growth()) figures.add(`cost of ${name}`, cost, '×', 'less');
  figures.heading('Drives of the study side by side, live engine, drawing left out');
  besideCost().forEach((processors, k) => {
    figures.add(`processors for ${k + 1} drive${k > 0 ? 's' : ''}`, processors, '', 'less', 'in real time');
  });
}

async function answers() {
  const { pretuningTime, studyTime, machinesPerSecond } = await bundle('tests/benchmarks/answers.ts');
  figures.heading(
    'Answers, one thread, time of the processor; and how much of the opening scene the program in C runs in it',
  );
  const inC = (seconds) => (cPace === null ? '' : `C: ${(seconds * cPace).toFixed(0)} s of the scene`);
  const pretuning = await pretuningTime();
  figures.add('pretuning', pretuning, 's', 'less', inC(pretuning));
  const study = await studyTime();
  figures.add('study', study, 's', 'less', inC(study));
  const machines = machinesPerSecond();
  figures.add('tolerance machines', machines, 'per s', 'more', inC(1 / machines));
}

async function analysis() {
  const { analysisPace } = await bundle('tests/benchmarks/analysisPace.ts');
  figures.heading('Loop analysis, one thread, time of the processor');
  for (const { name, median, longest, points } of analysisPace())
    figures.add(
      `analysis: ${name}`,
      median,
      'ms',
      'less',
      `at most ${longest.toFixed(1)} ms; ${points} frequencies`,
    );
}

async function timeLapse() {
  const { timeLapsePace } = await bundle('tests/benchmarks/timeLapseBench.ts');
  figures.heading('Time-lapse: two minutes of duty, and how it stands to the full model from end to end');
  for (const { name, took, kelvin, rise, drift, growth } of timeLapsePace()) {
    const [full, lapse] = took;
    const off = ([is, shown]) => `${(100 * Math.abs(shown / is - 1)).toFixed(2)} %`;
    const remark = `faster; ${kelvin.toFixed(3)} K of ${rise.toFixed(0)} K off, drift ${off(drift)}, growth ${off(growth)}`;
    figures.add(`time-lapse over full model: ${name}`, full / lapse, '×', 'more', remark);
  }
}

/** Returns the version of the browser. */
async function page() {
  const { browser, folder, scripts, whole, folded, slow, heaps, beside } = await pagePace(minutes);
  figures.heading('Scripts, compressed');
  const sizes = scriptSizes(folder);
  const first = sizes.filter(({ name }) => scripts.includes(name)).reduce((sum, { bytes }) => sum + bytes, 0);
  const all = sizes.reduce((sum, { bytes }) => sum + bytes, 0);
  figures.add(
    'first load',
    first / 1000,
    'kB',
    'less',
    `${Math.round((100 * first) / FIRST_LOAD)} % of the budget`,
  );
  figures.add('all scripts', all / 1000, 'kB', 'less');

  figures.heading('Page, in a headless browser that draws by software, while a gain is dragged');
  tuning('', whole);
  tuning(', folded', folded);
  tuning(', folded, 4 × slower', slow);
  for (const [what, milliseconds] of Object.entries(await firstAnswers()))
    figures.add(
      `pretuning, ${what}`,
      milliseconds,
      'ms',
      'less',
      'from the press, stage folded, by the clock',
    );
  const { study, changed, machines } = await studyWaits();
  const byTheClock = 'stage folded, paused, by the clock';
  figures.add('wait for a study', study, 's', 'less', byTheClock);
  figures.add('wait after one input', changed, 's', 'less', byTheClock);
  figures.add('tolerance machines in the page', machines, 'per s', 'more', byTheClock);
  figures.add('pace of 4 drives', beside, '×', 'more', 'side by side, stage folded, over real time');

  for (const { minute, simulated, page: inPage, worker } of heaps)
    figures.note(
      `memory after ${minute} min`,
      `${inPage.toFixed(1)} MB`,
      `and ${worker.toFixed(1)} MB in the simulation; ${simulated} simulated`,
    );
  const [early, late] = [heaps[0], heaps.at(-1)].map((heap) => heap.page + heap.worker);
  figures.add('memory, last to first', late / early, '', 'less', 'at full speed; 1 is no growth');
  return browser;
}

function tuning(how, { latencies, tasks }) {
  const sorted = latencies.toSorted((a, b) => a - b);
  const remark = `at most ${sorted.at(-1)} in ${sorted.length} slides`;
  figures.add(`slider to chart${how}`, sorted[sorted.length >> 1], 'refreshes', 'less', remark);
  const { longest, median, longestWaited, above50, refreshes } = tasks;
  const waited = `of the processor; ${longestWaited.toFixed(0)} ms by the clock; ${above50} of ${refreshes} above 50 ms`;
  figures.add(`longest task${how}`, longest, 'ms', 'less', waited);
  figures.add(`median task${how}`, median, 'ms', 'less', 'the one in the middle of those that drew');
}

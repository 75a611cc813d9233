/** `npm run bench`: what the product costs, as ratios measured in one run. `-- --long` watches memory for half an hour. */
import { cpus } from 'node:os';
import { join } from 'node:path';
import { argv, versions } from 'node:process';
import { firstAnswers } from '../benchmarks/firstAnswers.mjs';
import { pagePace } from '../benchmarks/pagePace.mjs';
import { scriptSizes } from '../benchmarks/pageSize.mjs';
import { bundle } from './bundle.mjs';
import { ROOT } from './sources.mjs';

/** Scripts that the page loads before it runs, compressed, bytes. */
const BUDGET = 350_000;

const minutes = argv.includes('--long') ? [1, 10, 20, 30] : [1, 3];

const { modelPace } = await bundle('tests/benchmarks/modelPace.ts');
heading('Model: simulated seconds per second, one thread');
for (const { name, realTimeFactor, currentRate } of modelPace())
  row(name, `${realTimeFactor.toFixed(1)} ×`, `current loop at ${currentRate / 1000} kHz`);

const { enginePace } = await bundle('tests/benchmarks/enginePace.ts');
heading(
  'Engines: pace of the processor over that of the same axis in C, -O3, two Runge-Kutta steps a period',
);
for (const { name, live, batch, native, apart } of enginePace(join(ROOT, 'tests/benchmarks/native/axis.c'))) {
  const byBatch = `batch ${(batch / live).toFixed(1)} × live`;
  if (native === null) row(name, byBatch, 'no C compiler on this system, so no comparison with C');
  else {
    const ends = `${byBatch}; C ends ${(1e9 * apart).toPrecision(1)} nm beside batch`;
    row(name, `${(batch / native).toFixed(2)} ×`, `batch, live ${(live / native).toFixed(2)} ×; ${ends}`);
  }
}

const { analysisPace } = await bundle('tests/benchmarks/analysisPace.ts');
heading('Loop analysis, one thread');
for (const { name, median, longest, points } of analysisPace())
  row(name, `${median.toFixed(1)} ms`, `at most ${longest.toFixed(1)} ms; ${points} frequencies`);

const { timeLapsePace } = await bundle('tests/benchmarks/timeLapseBench.ts');
heading('Time-lapse: ten minutes of duty, and how it stands to the full model from end to end');
for (const { name, took, kelvin, rise, drift, growth } of timeLapsePace()) {
  const [full, lapse] = took;
  const off = ([is, shown]) => `${(100 * Math.abs(shown / is - 1)).toFixed(2)} %`;
  const remark = `faster; ${kelvin.toFixed(3)} K of ${rise.toFixed(0)} K off, drift ${off(drift)}, growth ${off(growth)}`;
  row(name, `${(full / lapse).toFixed(0)} ×`, remark);
}

const page = await pagePace(minutes);
heading('Scripts, compressed');
const sizes = scriptSizes(page.folder);
const isFirst = ({ name }) => page.scripts.includes(name);
for (const size of sizes) row(size.name, kilobytes(size.bytes), isFirst(size) ? 'first load' : 'later');
const first = sizes.filter(isFirst).reduce((sum, { bytes }) => sum + bytes, 0);
const share = Math.round((100 * first) / BUDGET);
row('first load', kilobytes(first), `${share} % of the budget of ${kilobytes(BUDGET)}`);

heading('Page, in a headless browser that draws by software');
tuning('', page.whole);
tuning(', stage folded', page.folded);
tuning(', folded, 4 × slower', page.slow);
for (const { minute, simulated, page: inPage, worker } of page.heaps) {
  const remark = `and ${megabytes(worker)} in the simulation; ${simulated} simulated`;
  row(`memory after ${minute} min`, megabytes(inPage), remark);
}
const [early, late] = [page.heaps[0], page.heaps.at(-1)].map((heap) => heap.page + heap.worker);
row('memory, last to first', (late / early).toFixed(3), 'at full speed; 1 is no growth');

const waits = await firstAnswers();
heading('Pretuning in the page, stage folded away: from the press until there is');
for (const [what, milliseconds] of Object.entries(waits)) row(what, `${milliseconds} ms`, '');

const [{ model }, ...others] = cpus();
console.log(`\n${model}, ${others.length + 1} threads; Node ${versions.node}; Chromium ${page.browser}`);

function tuning(how, { latency, refresh, longestTask }) {
  const sorted = latency.toSorted((a, b) => a - b);
  const median = sorted[Math.floor(sorted.length / 2)];
  const remark = `of ${refresh.toFixed(0)} ms; at most ${sorted.at(-1)} in ${sorted.length} slides`;
  row(`slider to chart${how}`, `${median} refreshes`, remark);
  const longest = longestTask > 0 ? `${longestTask.toFixed(0)} ms` : 'below 50 ms';
  row(`longest task${how}`, longest, 'on the main thread, while tuning');
}

function heading(words) {
  console.log(`\n${words}`);
}

function row(name, value, remark) {
  console.log(`  ${name.padEnd(36)} ${value.padStart(12)}   ${remark}`);
}

function megabytes(amount) {
  return `${amount.toFixed(1)} MB`;
}

function kilobytes(bytes) {
  return `${(bytes / 1000).toFixed(0)} kB`;
}

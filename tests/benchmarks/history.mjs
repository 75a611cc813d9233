import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../tools/sources.mjs';

/** One line of JSON for each run of the benchmarks, the newest last. */
const HISTORY = join(ROOT, 'tests', 'benchmarks', 'history.jsonl');
const README = join(ROOT, 'README.md');
const [BEGIN, END] = ['<!-- figures of npm run bench -->\n', '<!-- end of the figures -->\n'];

/**
 * @typedef {object} HistoryLine
 * @property {string} date year, month and day
 * @property {{ cores: number, processor: string, load: number }} machine `load` averaged over a minute, before the run: more than
 *   nothing, and others worked on it
 * @property {{ node: string, chromium: string, product: string, model: number }} versions
 * @property {Record<string, number>} figures by their names
 * @property {Record<string, string>} missing what could not be measured, and why
 */

/** @returns {HistoryLine[]} */
export function readHistory() {
  if (!existsSync(HISTORY)) return [];
  return readFileSync(HISTORY, 'utf8')
    .split('\n')
    .slice(0, -1)
    .map((line) => JSON.parse(line));
}

/** @param {HistoryLine} line */
export function remember(line) {
  appendFileSync(HISTORY, `${JSON.stringify(line)}\n`);
  const [before, , after] = readmeParts();
  writeFileSync(README, before + BEGIN + readmeTable(line) + END + after);
}

/** The table that stands in the README, to be compared with the last line. */
export function shownTable() {
  return readmeParts()[1];
}

function readmeParts() {
  const text = readFileSync(README, 'utf8');
  const [begin, end] = [text.indexOf(BEGIN), text.indexOf(END)];
  if (begin < 0 || end < begin) throw new Error('README.md has no place for the figures of npm run bench.');
  return [text.slice(0, begin), text.slice(begin + BEGIN.length, end), text.slice(end + END.length)];
}

/** What the table says: a heading, and from the figures of these names their geometric mean, or the one that there is. */
const ROWS = [
  ['Live engine (error controlled) over the same axis in C, pace of the processor', 'live over C', '×'],
  ['Batch engine (fixed steps) over C, likewise', 'batch over C', '×'],
  ['SciPy’s LSODA over C, derivatives in C, opening scene', 'LSODA over C', '×'],
  ['SciPy’s Radau over C, likewise', 'Radau over C', '×'],
  ['Cost of four motors instead of one', 'cost of 4 motors', '×'],
  ['Cost of three resonances more', 'cost of 3 resonances', '×'],
  ['Processors that four drives take in real time', 'processors for 4 drives', ''],
  ['Four drives side by side in the page, stage folded: pace over real time', 'pace of 4 drives', '×'],
  ['Pretuning of the opening scene with its trade-off, one thread', 'pretuning', 's'],
  ['Wait in the page for the first gains of a pretuning, by the clock', 'pretuning, a first answer', 'ms'],
  ['And for its result, trade-off and proofs included', 'pretuning, the result', 'ms'],
  ['Study of four drives, tuned and simulated, one thread', 'study', 's'],
  ['Wait in the page for that study, by the clock', 'wait for a study', 's'],
  ['And after one input, the hours a day, has changed', 'wait after one input', 's'],
  ['Machines of a tolerance study, one thread', 'tolerance machines', 'per s'],
  ['Likewise in the page, all its workers, by the clock', 'tolerance machines in the page', 'per s'],
  ['Time-lapse over the full model', 'time-lapse over full model', '×'],
  [
    'Slider to chart, processor slowed 4 ×, stage folded, median',
    'slider to chart, folded, 4 × slower',
    'refreshes',
  ],
  [
    'Longest task of the main thread while a gain is dragged, likewise',
    'longest task, folded, 4 × slower',
    'ms',
  ],
  ['Median of these tasks', 'median task, folded, 4 × slower', 'ms'],
  ['First load, compressed', 'first load', 'kB'],
];

/**
 * @param {HistoryLine} line
 * @returns {string} of Markdown
 */
export function readmeTable({ date, machine, versions, figures, missing }) {
  const rows = ROWS.map(([label, name, unit]) => {
    const values = Object.keys(figures)
      .filter((key) => key === name || key.startsWith(`${name}: `))
      .map((key) => figures[key]);
    return [label, values.length > 0 ? summary(values, unit) : (missing[name] ?? 'not measured')];
  });
  const { cores, processor, load } = machine;
  const { node, chromium, product, model } = versions;
  const where = `${date}; ${processor}, ${cores} threads, load average ${load} before the run; Node ${node}, Chromium ${chromium}; Waybench ${product}, model ${model}.`;
  return [...aligned([['figure', 'last run'], ...rows]), '', where, ''].join('\n');
}

/** A table of two columns, the first of them a heading, as the formatter leaves it. */
function aligned(cells) {
  const widths = [0, 1].map((column) => Math.max(...cells.map((row) => row[column].length)));
  const [heading, ...rows] = cells.map(
    (row) => `| ${row.map((cell, k) => cell.padEnd(widths[k])).join(' | ')} |`,
  );
  return [heading, `| ${widths.map((width) => '-'.repeat(width)).join(' | ')} |`, ...rows];
}

/** '0.51 × (0.38 to 0.69 in 11 scenes)'. */
function summary(values, unit) {
  const text = (value) => (value >= 100 ? Math.round(value) : Number(value.toPrecision(2)));
  const mean = Math.exp(values.reduce((sum, value) => sum + Math.log(value), 0) / values.length);
  const shown = `${text(mean)} ${unit}`.trim();
  if (values.length === 1) return shown;
  return `${shown} (${text(Math.min(...values))} to ${text(Math.max(...values))} in ${values.length} scenes)`;
}

/** Smaller changes are chance, share. */
const CHANCE = 0.02;

/**
 * How a figure stands to the one that was recorded last, in words: a step backwards is called worse.
 *
 * @param {number} value
 * @param {number | undefined} was
 * @param {'more' | 'less'} better
 */
export function changeText(value, was, better) {
  if (was === undefined) return 'not recorded before';
  if (Math.abs(value - was) <= CHANCE * Math.abs(was)) return 'as before';
  const verdict = value > was === (better === 'more') ? 'better' : 'worse';
  const share = Math.abs(was) > 0 ? `${Math.round(100 * Math.abs(value / was - 1))} % ` : '';
  return `was ${Number(was.toPrecision(3))}: ${share}${verdict}`;
}

/**
 * Records the study that opens first, simulated in full, as the page opens it and as the tests of verdict, report and drawings use it:
 * `node tests/tools/recordStudy.mjs`, two to four minutes. To be run again when the model, a kit or a field of an outcome changes.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pid } from 'node:process';
import { bundle } from './bundle.mjs';
import { ROOT } from './sources.mjs';

const RECORDED = join(ROOT, 'scenes/simulated/defaultStudy.json');

const GAINS = join(ROOT, 'scenes/simulated/defaultGains.json');

/** As many entries of a list are kept at most, the first and the last among them: of a day of heat, and of tests, whose curves are fine. */
const MAX_LENGTHS = { heat: 101, accuracy: 601 };
/** Digits of a number that are kept. */
const DIGITS = 6;

/**
 * Every number to a few digits, and of long lists every n-th entry.
 * @param {unknown} value
 * @param {number} maxLength
 * @returns {unknown}
 */
function thinned(value, maxLength) {
  if (typeof value === 'number') return Number(value.toPrecision(DIGITS));
  if (Array.isArray(value)) {
    const step = Math.max(1, Math.ceil((value.length - 1) / (maxLength - 1)));
    return value
      .filter((_, k) => k % step === 0 || k === value.length - 1)
      .map((each) => thinned(each, maxLength));
  }
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(Object.entries(value).map(([name, each]) => [name, thinned(each, maxLength)]));
}

/** The terms of the energy of a cycle add up to what is drawn, also once they are rounded. */
function balanced(energy) {
  const { cycleTime, drawn, ...terms } = energy;
  return { ...energy, drawn: Object.values(terms).reduce((sum, each) => sum + each, 0) };
}

/**
 * What the tests need of a candidate; its scene and its sizing follow from the choice.
 * @param {{ choice: object, outcome: any }} candidate
 */
function recorded({ choice, outcome }) {
  const { accuracy: whole, ...others } = outcome;
  const rest = thinned(others, MAX_LENGTHS.heat);
  const accuracy = thinned(whole, MAX_LENGTHS.accuracy);
  return { choice, outcome: { ...rest, accuracy: { ...accuracy, energy: balanced(accuracy.energy) } } };
}

const study = join(tmpdir(), `study-${pid}.json`);
const result = join(tmpdir(), `result-${pid}.json`);
try {
  const { DEFAULT_STUDY } = await bundle('scenes/defaultStudy.ts');
  const { writeStudy } = await bundle('shared/files/studyFile.ts');
  const { main } = await bundle('workers/entry/commandLine.ts');
  const untuned = DEFAULT_STUDY.candidates.map((candidate) => ({ ...candidate, gains: null }));
  writeFileSync(study, writeStudy({ ...DEFAULT_STUDY, candidates: untuned }));
  await main([study, '--study', '--json', result]);
  const { job, candidates } = JSON.parse(readFileSync(result, 'utf8'));
  mkdirSync(dirname(RECORDED), { recursive: true });
  writeFileSync(RECORDED, `${JSON.stringify({ job, candidates: candidates.map(recorded) })}\n`);
  const gains = Object.fromEntries(candidates.map(({ choice }) => [choice.preset, choice.gains]));
  writeFileSync(GAINS, `${JSON.stringify(gains, null, 2)}\n`);
} finally {
  for (const file of [study, result]) rmSync(file, { force: true });
}

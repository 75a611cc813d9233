/**
 * npm run fuzz: random input, with many more examples than `npm test` draws, and what came of it in tests/fuzz/lastRun.json. Without
 * options it takes everything, with some only what they name. Every failure is shrunk and prints what reproduces it.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { argv, env, exit } from 'node:process';
import { parseArgs } from 'node:util';
import { ROOT } from './sources.mjs';

/** What is random: how much of it without options and at a time, the tests that draw it, and where they run. */
const KINDS = {
  jobs: { count: 1000, part: 1000, project: 'model', tests: ['tests/fuzz/jobs.test.ts'] },
  mutations: { count: 100_000, part: 20_000, project: 'model', tests: ['tests/fuzz/files.test.ts'] },
  scenes: {
    count: 10_000,
    part: 1000,
    project: 'model',
    tests: ['tests/fuzz/scenes.test.ts', 'tests/fuzz/fixedSteps.test.ts'],
  },
  faults: {
    count: 100,
    part: 20,
    project: 'long-page',
    tests: ['tests/e2e/faults/faults.long.test.ts', '-t', 'at a random instant'],
  },
  deeds: { count: 6000, part: 1000, project: 'page', tests: ['tests/e2e/fuzz/deeds.test.ts'] },
};
const RECORD = join(ROOT, 'tests/fuzz/lastRun.json');
const USAGE = `npm run fuzz -- [${[...Object.keys(KINDS), 'seed'].map((name) => `--${name} N`).join('] [')}]`;

const { seed, ...asked } = readArguments();
const record = JSON.parse(readFileSync(RECORD, 'utf8'));
let failed = 0;
for (const name of Object.keys(KINDS).filter((each) => each in asked)) failed += runKind(name, asked[name]);
exit(failed > 0 ? 1 : 0);

/** Part by part, each from another seed; what was done stands in the record if the rest is not waited for. Returns how much failed. */
function runKind(name, count) {
  const failures = [];
  for (let done = 0, part = 0; done < count && failures.length === 0; part++) {
    const some = Math.min(KINDS[name].part, count - done);
    failures.push(...failuresOf(name, some, seed + part));
    done += some;
    record[name] = { count: done, seed, failures };
    writeFileSync(RECORD, `${JSON.stringify(record, null, 2)}\n`);
    console.log(`${name}: ${done} of ${count}, ${failures.length} failed`);
  }
  return failures.length;
}

/** Names of the tests that failed; of a file that could not even be loaded, its own. */
function failuresOf(name, count, seed) {
  const { project, tests } = KINDS[name];
  const folder = mkdtempSync(join(tmpdir(), 'waybench-fuzz-'));
  const report = join(folder, 'report.json');
  const counts = { [`FUZZ_${name.toUpperCase()}`]: String(count), FUZZ_SEED: String(seed) };
  const reports = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  spawnSync('npx', ['vitest', 'run', '--project', project, ...tests, ...reports], {
    cwd: ROOT,
    stdio: 'inherit',
    env: { ...env, ...counts },
  });
  const { testResults } = JSON.parse(readFileSync(report, 'utf8'));
  rmSync(folder, { recursive: true });
  return testResults.flatMap(({ status, assertionResults, name: file }) => {
    const failed = assertionResults.filter((each) => each.status === 'failed').map((each) => each.fullName);
    return failed.length === 0 && status === 'failed' ? [relative(ROOT, file)] : failed;
  });
}

function readArguments() {
  try {
    const names = [...Object.keys(KINDS), 'seed'];
    const options = Object.fromEntries(names.map((name) => [name, { type: 'string' }]));
    const { values } = parseArgs({ args: argv.slice(2), options });
    for (const [name, text] of Object.entries(values))
      if (!/^\d+$/.test(text)) throw new Error(`--${name} has to be a whole number, not ${text}.`);
    const { seed = '1', ...counts } = values;
    const all = Object.fromEntries(Object.entries(KINDS).map(([name, { count }]) => [name, String(count)]));
    const chosen = Object.keys(counts).length > 0 ? counts : all;
    return Object.fromEntries(
      Object.entries({ ...chosen, seed }).map(([name, text]) => [name, Number(text)]),
    );
  } catch (error) {
    console.error(`${error.message}\n${USAGE}`);
    exit(2);
  }
}

/**
 * npm run fuzz: the tests of tests/fuzz and tests/e2e/fuzz with many more examples than `npm test` has, and what came of it in tests/fuzz/lastRun.json.
 * Every failure is shrunk and prints what reproduces it.
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { argv, env, exit } from 'node:process';
import { parseArgs } from 'node:util';
import { ROOT } from './sources.mjs';

const DEFAULTS = { scenes: '10000', mutations: '100000', jobs: '1000', deeds: '6000', seed: '1' };
const USAGE = `npm run fuzz -- [${Object.keys(DEFAULTS)
  .map((name) => `--${name} N`)
  .join('] [')}]`;

const asked = readArguments();
const folder = mkdtempSync(join(tmpdir(), 'waybench-fuzz-'));
const report = join(folder, 'report.json');
const counts = Object.fromEntries(
  Object.entries(asked).map(([name, text]) => [`FUZZ_${name.toUpperCase()}`, text]),
);
const { status } = spawnSync(
  'npx',
  [
    'vitest',
    'run',
    '--project',
    'model',
    '--project',
    'page',
    'tests/fuzz',
    'tests/e2e/fuzz',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ],
  { cwd: ROOT, stdio: 'inherit', env: { ...env, ...counts } },
);
const { numPassedTests, numFailedTests, testResults } = JSON.parse(readFileSync(report, 'utf8'));
rmSync(folder, { recursive: true });
const failures = testResults.flatMap(({ assertionResults }) =>
  assertionResults.filter((each) => each.status === 'failed').map(({ fullName }) => fullName),
);
const examples = Object.fromEntries(Object.entries(asked).map(([name, text]) => [name, Number(text)]));
const lastRun = { ...examples, passed: numPassedTests, failed: numFailedTests, failures };
writeFileSync(join(ROOT, 'tests/fuzz/lastRun.json'), `${JSON.stringify(lastRun, null, 2)}\n`);
exit(status ?? 1);

function readArguments() {
  try {
    const options = Object.fromEntries(
      Object.entries(DEFAULTS).map(([name, value]) => [name, { type: 'string', default: value }]),
    );
    const { values } = parseArgs({ args: argv.slice(2), options });
    for (const [name, text] of Object.entries(values))
      if (!/^\d+$/.test(text)) throw new Error(`--${name} has to be a whole number, not ${text}.`);
    return values;
  } catch (error) {
    console.error(`${error.message}\n${USAGE}`);
    exit(2);
  }
}

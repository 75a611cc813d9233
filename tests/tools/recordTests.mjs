/**
 * node tests/tools/recordTests.mjs: what came of the last `.ci/run`, whose reports lie in tests/out, for Help and for whoever reads
 * the repository: how many checks passed in each folder of the suite, in tests/lastRun.json.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { ROOT } from './sources.mjs';

const REPORTS = ['quick', 'long'];

const passed = {};
let failed = 0;
for (const name of REPORTS) {
  const { testResults, numFailedTests } = JSON.parse(
    readFileSync(join(ROOT, `tests/out/${name}.json`), 'utf8'),
  );
  failed += numFailedTests;
  for (const { name: file, assertionResults } of testResults) {
    const [, folder = ''] = relative(ROOT, file).split(sep);
    const count = assertionResults.filter(({ status }) => status === 'passed').length;
    passed[folder] = (passed[folder] ?? 0) + count;
  }
}
const sorted = Object.fromEntries(Object.entries(passed).sort(([a], [b]) => a.localeCompare(b)));
writeFileSync(join(ROOT, 'tests/lastRun.json'), `${JSON.stringify({ passed: sorted, failed }, null, 2)}\n`);

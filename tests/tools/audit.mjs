/** Asks the registry for known vulnerabilities of what is installed: fails on one that is high or critical, and never because nobody answers. */
import { spawnSync } from 'node:child_process';
import { ROOT } from './sources.mjs';

const { stdout } = spawnSync('npm', ['audit', '--json'], { cwd: ROOT, encoding: 'utf8' });
const counts = countsIn(stdout);
if (counts === null) console.log('npm audit: the registry does not answer, so nothing was checked.');
else {
  const serious = counts.high + counts.critical;
  console.log(`npm audit: ${counts.total} known vulnerabilities, ${serious} of them high or critical.`);
  process.exitCode = serious > 0 ? 1 : 0;
}

/** @param {string} text */
function countsIn(text) {
  try {
    return JSON.parse(text).metadata?.vulnerabilities ?? null;
  } catch {
    return null;
  }
}

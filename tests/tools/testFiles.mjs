import { filesUnder } from './sources.mjs';

/**
 * How many files of tests each folder of the suite holds.
 * @returns {Record<string, number>}
 */
export function testFiles() {
  /** @type {Record<string, number>} */
  const counts = {};
  for (const file of filesUnder('tests').filter((each) => each.endsWith('.test.ts'))) {
    const [, folder = ''] = file.split('/');
    counts[folder] = (counts[folder] ?? 0) + 1;
  }
  return counts;
}

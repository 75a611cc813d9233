/**
 * Records the study that opens first, simulated in full, as the page opens it and as the tests of verdict, report and drawings use it:
 * `node tests/tools/recordStudy.mjs`, two to four minutes. To be run again when the model, a kit or a field of an outcome changes.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pid } from 'node:process';
import { bundle } from './bundle.mjs';
import { recorded } from './recorded.mjs';
import { ROOT } from './sources.mjs';

const RECORDED = join(ROOT, 'scenes/simulated/defaultStudy.json');

const GAINS = join(ROOT, 'scenes/simulated/defaultGains.json');

/** As many entries of a list are kept at most, the first and the last among them: of a day of heat, and of tests, whose curves are fine. */
const MAX_LENGTHS = { heat: 101, accuracy: 601 };

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
  writeFileSync(
    RECORDED,
    `${JSON.stringify({ job, candidates: candidates.map((each) => recorded(each, MAX_LENGTHS)) })}\n`,
  );
  const gains = Object.fromEntries(candidates.map(({ choice }) => [choice.preset, choice.gains]));
  writeFileSync(GAINS, `${JSON.stringify(gains, null, 2)}\n`);
} finally {
  for (const file of [study, result]) rmSync(file, { force: true });
}

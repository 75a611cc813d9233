/**
 * Simulates the nine jobs of the trade, each drive that its sizing does not rule out, and records what is found for their test:
 * `node tests/tools/recordJobs.mjs`, five minutes on a quiet core. To be run again when the model, a kit or the pretuning changes.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { bundle } from './bundle.mjs';
import { JOB_LENGTHS, recorded, thinned } from './recorded.mjs';
import { ROOT } from './sources.mjs';

const RECORDED = join(ROOT, 'tests/practice/simulatedJobs.json');
const { PRESETS } = await bundle('scenes/index.ts');
const { defaultParameters } = await bundle('shared/core/parameters/table.ts');
const { simulateStudy } = await bundle('workers/entry/study/simulateStudy.ts');
const { JOBS_OF_THE_TRADE } = await bundle('tests/practice/jobsOfTheTrade.ts');
const { drivesThatPass } = await bundle('tests/practice/drivesThatPass.ts');

/** What tells an axis from the default one. */
function setParameters({ parameters }) {
  const usual = defaultParameters();
  return Object.fromEntries(Object.entries(parameters).filter(([name, value]) => value !== usual[name]));
}

const jobs = [];
for (const { job, parts } of JOBS_OF_THE_TRADE) {
  const passing = drivesThatPass(job, parts, PRESETS).map(({ choice }) => choice);
  const { candidates } = await simulateStudy({ job, candidates: passing });
  jobs.push({
    title: job.title,
    candidates: candidates.map((each) => ({
      ...recorded(each, JOB_LENGTHS),
      parameters: thinned(setParameters(each.scene), Infinity),
    })),
  });
  console.log(job.title);
}
writeFileSync(RECORDED, `${JSON.stringify(jobs)}\n`);

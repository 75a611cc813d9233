/**
 * npm run soak: model and page at work for long. A day of simulated time: scenes live at full pace, with their damping changed as they run, and
 * a day of their duty as time-lapse; then the built page, run and tuned for half an hour. Memory, nodes, listeners and workers must not grow,
 * the table must not drift, the energy account must balance. What came of it stands in tests/fuzz/lastSoak.json.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { argv, exit } from 'node:process';
import { parseArgs } from 'node:util';
import { launchBrowser } from './browser.mjs';
import { bundle } from './bundle.mjs';
import { servePage } from './servePage.mjs';
import { ROOT } from './sources.mjs';

/** Simulated seconds of each scene, hours of its duty, minutes of page. */
const DEFAULTS = { seconds: '120', hours: '24', minutes: '30' };
const USAGE = `npm run soak -- [${Object.keys(DEFAULTS)
  .map((name) => `--${name} N`)
  .join('] [')}]`;
/** Four quarters are compared. */
const MIN_ROUNDS = 8;

const { seconds, hours, minutes } = readArguments();
const { SOAK_SCENES, soakLive, soakLapse } = await bundle('tests/soak/model.ts');
const live = SOAK_SCENES.map((id) => told(id, soakLive(id, seconds)));
const lapse = SOAK_SCENES.map((id) => told(`${id}, ${hours} h`, soakLapse(id, hours)));
const page = told('page', await soakBuiltPage());

const largest = (values) => Math.max(...values.map(Math.abs));
const failures = [...live, ...lapse, page].flatMap((each) => each.failures);
const record = {
  scenes: SOAK_SCENES.length,
  seconds,
  hours,
  cycles: live.reduce((sum, { cycles }) => sum + cycles, 0),
  heapGrowth: Math.max(...[...live, ...lapse].map(({ heapGrowth }) => heapGrowth)),
  drift: largest(live.map(({ drift }) => drift)),
  residual: largest(live.map(({ residual }) => residual)),
  page: { minutes, rounds: page.rounds, afterWarmUp: page.first, last: page.last },
  failures,
};
writeFileSync(join(ROOT, 'tests/fuzz/lastSoak.json'), `${JSON.stringify(record, null, 2)}\n`);
exit(failures.length > 0 ? 1 : 0);

async function soakBuiltPage() {
  const { soakPage } = await bundle('tests/soak/page.ts');
  const served = await servePage();
  const browser = await launchBrowser();
  const end = Date.now() + minutes * 60_000;
  try {
    return await soakPage(browser, served.url, (rounds) => rounds < MIN_ROUNDS || Date.now() < end);
  } finally {
    await browser.close();
    await served.close();
  }
}

/** Passed on, and printed. */
function told(name, outcome) {
  console.log(`${name}: ${outcome.failures.length > 0 ? outcome.failures.join('; ') : 'in order'}`);
  return outcome;
}

function readArguments() {
  try {
    const options = Object.fromEntries(
      Object.entries(DEFAULTS).map(([name, value]) => [name, { type: 'string', default: value }]),
    );
    const { values } = parseArgs({ args: argv.slice(2), options });
    for (const [name, text] of Object.entries(values))
      if (!(Number(text) > 0 && Number(text) <= 1000))
        throw new Error(`--${name} has to be a number above 0 and up to 1000, not ${text}.`);
    return Object.fromEntries(Object.entries(values).map(([name, text]) => [name, Number(text)]));
  } catch (error) {
    console.error(`${error.message}\n${USAGE}`);
    exit(2);
  }
}

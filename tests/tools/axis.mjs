/** The launcher of `npm run axis -- ...`: the same axis as in the browser, without one. */
import { argv, env } from 'node:process';
import { bundle } from './bundle.mjs';

/** Distinct from the exit codes of the command itself: the tool is broken, not the axis or the input. */
const FAULT = 3;

try {
  const { main } = await bundle('workers/entry/commandLine.ts');
  // Paths on the command line are meant from where npm was called.
  if (env.INIT_CWD) process.chdir(env.INIT_CWD);
  process.exitCode = await main(argv.slice(2));
} catch (error) {
  console.error(error);
  process.exitCode = FAULT;
}

import { env } from 'node:process';

/** How many examples are drawn: few in `npm test`, as many as are asked for by `npm run fuzz`. */
export const COUNTS = {
  scenes: asked('FUZZ_SCENES', 12),
  mutations: asked('FUZZ_MUTATIONS', 1500),
  jobs: asked('FUZZ_JOBS', 25),
  /** On the page: keys, presses, values typed. */
  deeds: asked('FUZZ_DEEDS', 30),
  /** Workers that fail at a random instant of a task; in the long tests. */
  faults: asked('FUZZ_FAULTS', 5),
};

/** The same seed draws the same examples. */
export const SEED = asked('FUZZ_SEED', 20);

function asked(name: string, otherwise: number): number {
  const count = Number(env[name] ?? otherwise);
  if (!Number.isInteger(count) || count < 0) throw new Error(`${name} has to be a whole number from 0 on.`);
  return count;
}

/** Writes the run named on the command line with every parameter of its scene, as reference.py reads it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { argv } from 'node:process';
import { bundle } from '../tools/bundle.mjs';
import { ROOT } from '../tools/sources.mjs';

const name = argv[2];
const runs = JSON.parse(readFileSync(join(ROOT, 'tests/reference/runs.json'), 'utf8'));
const run = runs[name];
if (!run) throw new Error(`"${name}" is not one of the runs ${Object.keys(runs).join(', ')}.`);

const { sceneById } = await bundle('scenes/index.ts');

const parameters = { ...sceneById(run.scene).parameters, ...run.changes };
console.log(JSON.stringify({ run: name, ...run, parameters }));

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

const { SCENES } = await bundle('scenes/index.ts');
const shelf = SCENES.find((each) => each.name === run.scene);
if (!shelf) throw new Error(`Run ${name}: there is no scene "${run.scene}".`);

const parameters = { ...shelf.scene.parameters, ...run.changes };
console.log(JSON.stringify({ run: name, ...run, parameters }));

import { parseArgs } from 'node:util';
import { SHELF } from '../../scenes/index.ts';
import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX, CHANNEL_NAMES } from '../../shared/core/channels.ts';
import { checkParameters } from '../../shared/core/check.ts';
import { crossChecks } from '../../shared/core/crossChecks.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import { isParameterName, parameterRow } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { readScene } from '../../shared/files/sceneFile.ts';
import type { Engine } from '../../shared/protocol/axis.ts';
import { CALCULATED } from '../../shared/verdict/confidence/findConfidence.ts';
import { measureRun } from '../run/measureRun.ts';
import { ENGINES } from '../solver/engine.ts';
import { CsvWriter } from './csvWriter.ts';
import { decimalOf } from './decimal.ts';
import { BAD_INPUT, BadInput, badEntries, DONE, read, TRIPPED, UNTRUSTED, write } from './exit.ts';
import { jsonText } from './jsonText.ts';
import { runLapse } from './lapseCommand.ts';
import { RunProgress } from './runProgress.ts';
import { runStudy } from './study/studyCommand.ts';
import { summaryText } from './summaryText.ts';
import { mergeResults, runShard } from './tolerance/toleranceCommand.ts';

const USAGE = `npm run axis -- scenes/NAME.json [--seconds 1.2] [--set name=value ...] [--engine odex|batch] [--csv out.csv] [--json summary.json]
npm run axis -- scenes/NAME.json --hours 8 [--winding-target 90] [--growth-target 2e-6] [--set ...] [--csv ...] [--json ...]
npm run axis -- STUDY.json --study [--draws 100] [--json ...]
npm run axis -- TOLERANCES.json --runs 1..1000 --out results.jsonl [--json ...]
npm run axis -- --merge results.jsonl ... [--json ...]

Runs a scene without a page. --set takes any row of the parameter table, in SI units.
--engine chooses what integrates the plant: odex with control of its error, by default, or batch, in fixed steps and faster; where the
plant is too stiff for fixed steps, odex runs, and the summary says so.
The CSV has every channel at every position-loop sample, unrounded, in SI units.
--hours runs a time-lapse instead: what heat does in hours of this duty, with and without cooling. The targets, °C and m, are
limits that cooling has to keep; the CSV has one line a minute.
--study compares the drives of a study file: candidates without gains are tuned, all are simulated. It takes a minute. With what
probability the choice holds is calculated from 1000 jobs within usual ranges; --draws has the moves of so many of them simulated, too.
--runs builds and runs machines of a tolerance study, from the first to the last number, and writes a line of JSON for each; a file that
a killed run has left is carried on. --merge puts such files together.
Exit code: 0 done, 1 tripped, 2 bad input, 3 the tool itself is broken, 4 the energy account does not balance.`;

/** What asks for something else than the run of a scene. */
const KINDS = ['study', 'runs', 'merge'] as const;

/** Runs the axis headless. Returns the exit code. */
export async function main(argv: string[]): Promise<number> {
  try {
    const { values, positionals } = readArguments(argv);
    if (values.help) {
      console.log(USAGE);
      return DONE;
    }
    const kind = KINDS.find((each) => values[each] !== undefined);
    if (kind !== undefined)
      for (const name of ['seconds', 'hours', 'set', 'csv', 'engine'] as const)
        if (values[name] !== undefined)
          throw new BadInput(`--${name} is for a scene: leave it out with --${kind}.`);
    if (values.draws !== undefined && !values.study)
      throw new BadInput('--draws is for a study: give it with --study.');
    if (values.merge) return mergeResults(positionals, values.json);
    const path = onlyPath(positionals);
    if (values.runs !== undefined) return runShard(path, values.runs, values.out, values.json);
    if (values.study) return await runStudy(path, values.json, readDraws(values.draws));
    const scene = readSceneFile(path, values.set ?? []);
    if (values.hours !== undefined) {
      if (values.seconds !== undefined) throw new BadInput('Give --seconds or --hours, not both.');
      if (values.engine !== undefined)
        throw new BadInput('--engine is for --seconds: leave it out with --hours.');
      const typed = {
        hours: values.hours,
        windingTarget: values['winding-target'],
        growthTarget: values['growth-target'],
      };
      return runLapse(scene, typed, values.csv, values.json);
    }
    const seconds = readSeconds(values.seconds);
    return run(scene, seconds, readEngine(values.engine), values.csv, values.json);
  } catch (error) {
    if (!(error instanceof BadInput)) throw error;
    console.error(error.message);
    return BAD_INPUT;
  }
}

function run(scene: Scene, seconds: number, engine: Engine, csvPath?: string, jsonPath?: string): number {
  const csv = csvPath === undefined ? null : new CsvWriter(csvPath, CHANNEL_NAMES);
  const progress = new RunProgress(seconds);
  const onSample = (record: Float64Array) => {
    csv?.add(record);
    progress.take(valueAt(record, CHANNEL_INDEX.time));
  };
  const summary = measureRun(scene, seconds, onSample, ENGINES[engine]);
  csv?.close();
  progress.end();
  if (jsonPath !== undefined) write(jsonPath, jsonText(summary));
  console.log(summaryText(scene, summary, engine));
  if (!summary.energyHolds) return UNTRUSTED;
  return summary.trip ? TRIPPED : DONE;
}

function readArguments(argv: string[]) {
  try {
    return parseArgs({
      args: argv,
      allowPositionals: true,
      options: {
        seconds: { type: 'string' },
        engine: { type: 'string' },
        hours: { type: 'string' },
        study: { type: 'boolean' },
        draws: { type: 'string' },
        runs: { type: 'string' },
        out: { type: 'string' },
        merge: { type: 'boolean' },
        'winding-target': { type: 'string' },
        'growth-target': { type: 'string' },
        set: { type: 'string', multiple: true },
        csv: { type: 'string' },
        json: { type: 'string' },
        help: { type: 'boolean' },
      },
    });
  } catch (error) {
    throw new BadInput(`${error instanceof Error ? error.message : error}\n\n${USAGE}`);
  }
}

function readSeconds(text = '1'): number {
  const seconds = decimalOf(text);
  if (!(seconds > 0 && seconds <= 36000)) {
    throw new BadInput(`--seconds is ${text}; give a number of simulated seconds above 0 and up to 36000.`);
  }
  return seconds;
}

function readDraws(text = '0'): number {
  const draws = decimalOf(text);
  if (!Number.isInteger(draws) || draws < 0 || draws > CALCULATED)
    throw new BadInput(`--draws is ${text}; give a whole number of jobs from 0 to ${CALCULATED}.`);
  return draws;
}

function readEngine(name = 'odex'): Engine {
  if (!Object.hasOwn(ENGINES, name))
    throw new BadInput(`--engine is ${name}; give one of ${Object.keys(ENGINES).join(', ')}.`);
  return name as Engine;
}

function onlyPath([path, ...more]: string[]): string {
  if (path === undefined || more.length > 0) throw new BadInput(`Give one file.\n\n${USAGE}`);
  return path;
}

function readSceneFile(path: string, assignments: string[]): Scene {
  const result = readScene(read(path, 'scene file'), SHELF);
  if ('problems' in result) {
    throw badEntries(path, result.problems);
  }
  return withChanges(result.scene, assignments);
}

function withChanges(scene: Scene, assignments: string[]): Scene {
  const entries = new Map<string, unknown>();
  for (const assignment of assignments) {
    const at = assignment.indexOf('=');
    if (at < 1) throw new BadInput(`--set ${assignment}: write name=value.`);
    const name = assignment.slice(0, at);
    if (entries.has(name)) throw new BadInput(`--set ${assignment}: ${name} is set twice. Keep one.`);
    entries.set(name, readValue(name, assignment.slice(at + 1)));
  }
  // Own properties whatever the name: one that is also inherited is refused like any other stray.
  const input = Object.fromEntries(entries);
  const { changes, problems } = checkParameters(input, scene.parameters);
  const parameters = { ...scene.parameters, ...(changes as ParameterChanges) };
  const all = [...problems, ...crossChecks(parameters)];
  if (all.length > 0) throw badEntries('--set', all);
  return { ...scene, parameters };
}

/** Text to the type of the parameter's row; what does not fit is left to the check, which names the field. */
function readValue(name: string, text: string): unknown {
  if (!isParameterName(name)) return text;
  const { kind } = parameterRow(name);
  if (kind === 'switch') return text === 'true' ? true : text === 'false' ? false : text;
  if (kind === 'choice') return text;
  const value = decimalOf(text);
  return Number.isNaN(value) ? text : value;
}

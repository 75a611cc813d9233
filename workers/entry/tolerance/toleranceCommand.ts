import { stderr } from 'node:process';
import { SHELF } from '../../../scenes/index.ts';
import { readTolerance } from '../../../shared/files/toleranceFile.ts';
import type { RunResult } from '../../../shared/tolerance/runFigures.ts';
import { machinesOf, type ToleranceStudy } from '../../../shared/tolerance/toleranceStudy.ts';
import { steadyCycle } from '../../tolerance/leadIn.ts';
import { measureMachine } from '../../tolerance/measureMachine.ts';
import { summarise } from '../../tolerance/summarise.ts';
import { BadInput, badEntries, DONE, read, UNTRUSTED, write } from '../exit.ts';
import { jsonText } from '../jsonText.ts';
import { ResultWriter, readResults } from './resultFile.ts';
import { toleranceText } from './toleranceText.ts';

/** Between two lines of progress, runs. */
const STEP = 10;

/**
 * Runs some machines of a tolerance study and writes each as soon as it has run; what a killed run of the same shard has left
 * is carried on. Returns the exit code.
 *
 * @param range 'a..b', both included, machines counted from 1
 */
export function runShard(
  path: string,
  range: string,
  outPath: string | undefined,
  jsonPath?: string,
): number {
  const study = readStudy(path);
  const [from, to] = readRange(range, study.runs);
  if (outPath === undefined) throw new BadInput('Name the file for the results with --out.');
  const { leadIn } = steadyCycle(study.scene);
  const writer = new ResultWriter(outPath, { study, leadIn });
  const machine = machinesOf(study);
  const done = new Set(writer.before.map(({ run }) => run));
  const results = writer.before.filter(({ run }) => run >= from && run <= to);
  for (let run = from; run <= to; run++) {
    if (done.has(run)) continue;
    const result = { run, ...measureMachine(machine(run).scene, leadIn) };
    writer.add(result);
    results.push(result);
    if (stderr.isTTY && run % STEP === 0)
      stderr.write(`\rMachine ${run}, ${results.length} of ${to - from + 1}`);
  }
  writer.close();
  if (stderr.isTTY) stderr.write('\r\u001b[K');
  return report(study, results, jsonPath);
}

/** Puts files of results together, whatever their order. Returns the exit code. */
export function mergeResults(paths: readonly string[], jsonPath?: string): number {
  const results = new Map<number, RunResult>();
  let first: { readonly path: string; readonly head: string; readonly study: ToleranceStudy } | null = null;
  for (const path of paths) {
    const file = readResults(path);
    if (!file) throw new BadInput(`Cannot read results in ${path}.`);
    first ??= { path, ...file };
    if (file.head !== first.head)
      throw new BadInput(
        `${path} belongs to another study than ${first.path}. Merge only files of one study.`,
      );
    for (const result of file.results) {
      const other = results.get(result.run);
      if (other && JSON.stringify(other) !== JSON.stringify(result))
        throw new BadInput(
          `${path}: machine ${result.run} differs from its result in another file. Run both again with one version of Node.js.`,
        );
      results.set(result.run, result);
    }
  }
  if (!first) throw new BadInput('Give the files of results after --merge.');
  return report(first.study, [...results.values()], jsonPath);
}

function report(study: ToleranceStudy, found: readonly RunResult[], jsonPath: string | undefined): number {
  // In one order, so that sums are the same to the last digit whatever came first.
  const results = found.toSorted((a, b) => a.run - b.run);
  const summary = summarise(study, results);
  if (!summary) throw new BadInput('There is no result yet.');
  if (jsonPath !== undefined) write(jsonPath, jsonText(summary));
  console.log(toleranceText(study, summary));
  return summary.untrusted > 0 ? UNTRUSTED : DONE;
}

function readStudy(path: string): ToleranceStudy {
  const result = readTolerance(read(path, 'file of the tolerance study'), SHELF);
  if ('problems' in result) throw badEntries(path, result.problems);
  return result.study;
}

function readRange(text: string, runs: number): readonly [number, number] {
  const [, a, b] = /^(\d{1,9})\.\.(\d{1,9})$/.exec(text) ?? [];
  const [from, to] = [Number(a), Number(b)];
  if (!(from >= 1 && from <= to && to <= runs))
    throw new BadInput(
      `--runs is ${text}; give the first and the last machine, within 1..${runs}, as 1..100.`,
    );
  return [from, to];
}

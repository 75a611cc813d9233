import { closeSync, openSync, readFileSync, truncateSync, writeSync } from 'node:fs';
import { SHELF } from '../../../scenes/index.ts';
import { isRecord } from '../../../shared/core/problem.ts';
import { MODEL_VERSION } from '../../../shared/core/version.ts';
import { readTolerance, toleranceEntries } from '../../../shared/files/toleranceFile.ts';
import {
  RUN_FIGURE_NAMES,
  type RunFigureName,
  type RunResult,
} from '../../../shared/tolerance/runFigures.ts';
import type { ToleranceStudy } from '../../../shared/tolerance/toleranceStudy.ts';
import { BadInput, badEntries } from '../exit.ts';

/*
 * Results of a tolerance study are lines of JSON. The first, the manifest, holds all that the others follow from: the version
 * of the model, the cycles left out at the start, and the study with its scene, sampling and seed. Each of the others is one
 * machine, and is written as soon as it has run:
 *
 *   {"waybench":"tolerance results","version":1,"model":1,"leadIn":0,"study":{ … }}
 *   {"run":17,"trip":null,"holds":true,"settlingTime":0.052,"peakError":7.8e-6, … }
 *
 * So files of the same manifest can be put together in any order, and any of them can be made again.
 */

const VERSION = 1;

/** What the results of a study follow from. */
interface Manifest {
  readonly study: ToleranceStudy;
  readonly leadIn: number;
}

interface ResultFile extends Manifest {
  /** The manifest as it is written: files of the same study have the same. */
  readonly head: string;
  readonly results: readonly RunResult[];
  /** Characters up to the end of the last whole line. */
  readonly whole: string;
}

function manifestLine({ study, leadIn }: Manifest): string {
  const entries = { waybench: 'tolerance results', version: VERSION, model: MODEL_VERSION, leadIn };
  return JSON.stringify({ ...entries, study: toleranceEntries(study) });
}

function resultLine({ figures, ...others }: RunResult): string {
  return JSON.stringify({ ...others, ...figures });
}

/**
 * Reads a file of results. A last line without an end was cut off when the run was killed, and is left out.
 *
 * @returns null where there is no file, or none of its lines is whole
 * @throws BadInput where it is something else, or of another model
 */
export function readResults(path: string): ResultFile | null {
  const text = textOf(path);
  if (text === null) return null;
  const whole = text.slice(0, text.lastIndexOf('\n') + 1);
  const [head, ...lines] = whole.split('\n').slice(0, -1);
  if (head === undefined) return null;
  const results = lines.map((line, k) => {
    const result = parsedResult(line);
    if (!result)
      throw new BadInput(
        `${path}, line ${k + 2} is not the result of a machine. Delete the file and run it again.`,
      );
    return result;
  });
  return { ...readManifest(path, head), head, results, whole };
}

function textOf(path: string): string | null {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return null;
  }
}

function readManifest(path: string, head: string): Manifest {
  const entries = parsed(head);
  if (!isRecord(entries) || entries.waybench !== 'tolerance results')
    throw new BadInput(
      `${path} holds no results of a tolerance study: its first line says what it is. Give another file.`,
    );
  const { version, model, leadIn, study } = entries;
  if (version !== VERSION || model !== MODEL_VERSION)
    throw new BadInput(
      `${path} is of model ${model}, version ${version} of the format; this is model ${MODEL_VERSION}, version ${VERSION}. Run the study again.`,
    );
  const read = readTolerance(study, SHELF);
  if ('problems' in read) throw badEntries(path, read.problems);
  if (typeof leadIn !== 'number' || !Number.isInteger(leadIn) || leadIn < 0)
    throw new BadInput(`${path}: leadIn is not a whole number of cycles. Run the study again.`);
  return { study: read.study, leadIn };
}

function parsedResult(line: string): RunResult | null {
  const entries = parsed(line);
  if (!isRecord(entries)) return null;
  const { run, trip, holds } = entries;
  const isFigure = (name: RunFigureName) => entries[name] === null || Number.isFinite(entries[name]);
  if (!Number.isInteger(run) || typeof holds !== 'boolean' || !RUN_FIGURE_NAMES.every(isFigure)) return null;
  const figures = Object.fromEntries(RUN_FIGURE_NAMES.map((name) => [name, entries[name]]));
  return { run, trip, holds, figures } as unknown as RunResult;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Where results go as they come. A file that a killed run of the same study has left is carried on. */
export class ResultWriter {
  /** Of the file, already there. */
  readonly before: readonly RunResult[];
  readonly #path: string;
  readonly #file: number;

  /** @throws BadInput where the file is of another study, or cannot be written */
  constructor(path: string, manifest: Manifest) {
    this.#path = path;
    const head = manifestLine(manifest);
    const found = readResults(path);
    // What a run that was killed within its first line has left may be written over, nothing else.
    if (found ? found.head !== head : !head.startsWith(textOf(path) ?? ''))
      throw new BadInput(
        `${path} holds something other than results of this study. Give another file with --out, or delete this one.`,
      );
    this.before = found?.results ?? [];
    if (found) this.#tried(() => truncateSync(path, Buffer.byteLength(found.whole)));
    this.#file = this.#tried(() => openSync(path, found ? 'a' : 'w'));
    if (!found) this.#write(head);
  }

  add(result: RunResult): void {
    this.#write(resultLine(result));
  }

  close(): void {
    closeSync(this.#file);
  }

  #write(line: string): void {
    this.#tried(() => writeSync(this.#file, `${line}\n`));
  }

  #tried<T>(write: () => T): T {
    try {
      return write();
    } catch {
      throw new BadInput(`Cannot write ${this.#path}.`);
    }
  }
}

import { closeSync, openSync, writeSync } from 'node:fs';
import { BadInput } from './exit.ts';

/** Lines that are written at a time: few calls, and little is held. */
const LINES = 2000;

/** A CSV file that is written as its lines come: what stands in it is valid whenever the run ends. */
export class CsvWriter {
  readonly #path: string;
  readonly #file: number;
  #waiting: string[];

  /** @throws BadInput where the file cannot be written */
  constructor(path: string, columns: readonly string[]) {
    this.#path = path;
    this.#waiting = [columns.join(',')];
    this.#file = this.#tried(() => openSync(path, 'w'));
    this.#flush();
  }

  /** One line of numbers. */
  add(record: Float64Array): void {
    this.#waiting.push(record.join(','));
    if (this.#waiting.length >= LINES) this.#flush();
  }

  close(): void {
    this.#flush();
    closeSync(this.#file);
  }

  #flush(): void {
    if (this.#waiting.length === 0) return;
    const text = `${this.#waiting.join('\n')}\n`;
    this.#waiting = [];
    this.#tried(() => writeSync(this.#file, text));
  }

  #tried<T>(write: () => T): T {
    try {
      return write();
    } catch {
      throw new BadInput(`Cannot write ${this.#path}.`);
    }
  }
}

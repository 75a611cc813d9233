import { type CheckedValue, checkNumber, checkOption } from '../../core/check.ts';
import { checkText } from '../../core/checkText.ts';
import type { NumberRow } from '../../core/parameters/row.ts';
import { entryProblem, isNot, isRecord, type Problem, unknownName, within } from '../../core/problem.ts';
import type { Entries } from '../jsonFile.ts';

export const LONGEST_LINE = 120;
export const LONGEST_PARAGRAPH = 600;

/**
 * Reads the entries of one object of a file and gathers what is wrong with them. Where an entry is wrong a stand-in is returned: what
 * was read counts only if there are no problems.
 */
export class EntryReader {
  readonly #entries: Entries;
  /** Where the object lies in the file: 'steps[2].run'. */
  readonly #place: string;
  readonly problems: Problem[];
  /** What was read is an object at all; otherwise its entries are not worth a problem each. */
  readonly isObject: boolean;

  constructor(input: unknown, place: string, known: readonly string[], problems: Problem[]) {
    this.#place = place;
    this.problems = problems;
    this.#entries = isRecord(input) ? input : {};
    this.isObject = isRecord(input);
    if (!isRecord(input)) {
      problems.push(entryProblem(place, input, isNot(input, 'an object')));
      return;
    }
    const stray = Object.keys(input).find((name) => !known.includes(name));
    if (stray !== undefined) this.add(unknownName('an entry here', stray, known, input[stray]));
  }

  has(name: string): boolean {
    return this.#entries[name] !== undefined;
  }

  get(name: string): unknown {
    return this.#entries[name];
  }

  /** Where an entry lies in the file. */
  placeOf(name: string): string {
    return this.#place === '' ? name : `${this.#place}.${name}`;
  }

  /** One line of text; one that is left out is refused unless it may be empty. */
  text(name: string, longest: number, { mayBeEmpty = false } = {}): string {
    const value = this.#entries[name] ?? (mayBeEmpty ? '' : undefined);
    return this.#taken(name, checkText(value, longest, { mayBeEmpty }), '');
  }

  option<T extends string>(name: string, options: readonly T[], otherwise?: T): T {
    const value = this.#entries[name] ?? otherwise;
    return this.#taken(name, checkOption(value, options), options[0] as T);
  }

  number(name: string, row: NumberRow, otherwise?: number): number {
    const value = this.#entries[name] ?? otherwise;
    return this.#taken(name, checkNumber(value, row), row.default);
  }

  /** A list, each entry with its place; one that is left out is empty if it may be. */
  list(name: string, [min, max]: readonly [number, number]): { value: unknown; place: string }[] {
    const input = this.#entries[name] ?? (min === 0 ? [] : undefined);
    if (!Array.isArray(input)) {
      this.wrong(name, isNot(input, 'a list'));
      return [];
    }
    if (input.length < min || input.length > max) {
      this.wrong(name, `it has ${input.length} entries. Give ${min} to ${max}.`);
      return [];
    }
    return input.map((value, index) => ({ value, place: `${this.placeOf(name)}[${index}]` }));
  }

  /** Lines of text. */
  lines(name: string, count: readonly [number, number], longest: number): string[] {
    return this.list(name, count).map(({ value, place }) => {
      const checked = checkText(value, longest, { mayBeEmpty: false });
      if ('legal' in checked) return checked.legal;
      this.problems.push(entryProblem(place, value, checked.wrong));
      return '';
    });
  }

  wrong(name: string, message: string): void {
    this.problems.push(entryProblem(this.placeOf(name), this.#entries[name], message));
  }

  /** A problem of an entry of this object. */
  add(each: Problem): void {
    this.problems.push(this.#place === '' ? each : within(this.#place, each));
  }

  #taken<T>(name: string, checked: CheckedValue<T>, standIn: T): T {
    if ('legal' in checked) return checked.legal;
    this.problems.push(entryProblem(this.placeOf(name), this.#entries[name], checked.wrong));
    return standIn;
  }
}

import { at } from './at.ts';
import { type Name, type Sentence, sentenceText, type Wording } from './sentence.ts';

/** What is wrong with one entry of something a person typed, pasted, opened or followed. */
export interface Problem {
  /** Name or path of the entry, as it is written in a file; empty if it is the whole. */
  readonly field: string;
  readonly value: unknown;
  /** What the message is about, outermost first, where the message does not say so itself. */
  readonly about: readonly (string | Name)[];
  /** What is wrong, and how to fix it. */
  readonly message: Sentence;
}

/** What is refused, and why. */
export type Failure = { readonly problems: readonly Problem[] };

/** A problem whose message says by itself what it is about. */
export function problem(field: string, value: unknown, message: string | Sentence): Problem {
  return { field, value, about: [], message: typeof message === 'string' ? [message] : message };
}

/** A problem of an entry: `ticks: …`. `name` is what the entry is called, if not by its field. */
export function entryProblem(
  field: string,
  value: unknown,
  message: string | Sentence,
  name: string | Name = field,
): Problem {
  return { ...problem(field, value, message), about: [name] };
}

export function failure(...parts: Parameters<typeof problem>): Failure {
  return { problems: [problem(...parts)] };
}

export function entryFailure(...parts: Parameters<typeof entryProblem>): Failure {
  return { problems: [entryProblem(...parts)] };
}

/** The same problem of an entry that lies in another. */
export function within(place: string, { field, about, ...others }: Problem, name = place): Problem {
  return { ...others, field: `${place}.${field}`, about: [name, ...about] };
}

/** A problem in full, for a list of several: `payload: −1 kg is outside …`. */
export function problemText({ about, message }: Problem, wording: Wording): string {
  const subjects = about.map((each) => (typeof each === 'string' ? each : each[wording.names]));
  return [...subjects, sentenceText(message, wording)].join(': ');
}

export function problemTexts(problems: readonly Problem[], wording: Wording): string[] {
  return problems.map((each) => problemText(each, wording));
}

/** More problems than anyone reads; the rest is only counted, so that a hostile file stays cheap to refuse. */
export const MAX_PROBLEMS = 20;

const MAX_SHOWN = 40;

/** Line breaks and other control characters, and halves of a character pair. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}]/gu;

export function isPrintable(text: string): boolean {
  return text.search(UNPRINTABLE) < 0;
}

/** That a value of unknown type is not what it should be: `"abc" is not a number.` */
export function isNot(value: unknown, wanted: string): string {
  return value === undefined || value === null ? 'it is missing.' : `${shown(value)} is not ${wanted}.`;
}

/** A value of unknown type in a few characters, however large or deep it is. */
export function shown(value: unknown): string {
  if (typeof value === 'string') return `"${shortened(value)}"`;
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'an object';
  if (typeof value === 'function' || typeof value === 'symbol') return `a ${typeof value}`;
  return shortened(String(value));
}

export function shortened(text: string): string {
  const start = text.length > MAX_SHOWN ? `${text.slice(0, MAX_SHOWN)}…` : text;
  return start.replace(UNPRINTABLE, '\ufffd');
}

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Says that a name means nothing here, and which known name was perhaps meant. */
export function unknownName(kind: string, name: string, known: readonly string[], value: unknown): Problem {
  const meant = didYouMean(name, known) || ' Remove it.';
  return problem(shortened(name), value, `"${shortened(name)}" is not ${kind}.${meant}`);
}

/** ' Did you mean "stroke"?', or nothing if no name is near. */
export function didYouMean(name: string, known: readonly string[]): string {
  if (name.length > MAX_SHOWN) return '';
  let nearest = '';
  let min = Math.max(2, name.length / 3);
  for (const word of known) {
    const distance = editDistance(name.toLowerCase(), word.toLowerCase());
    if (distance <= min && (nearest === '' || distance < min)) {
      nearest = word;
      min = distance;
    }
  }
  return nearest && ` Did you mean "${nearest}"?`;
}

/** Fewest insertions, deletions and replacements (Levenshtein 1966; dynamic programming of Wagner and Fischer 1974). */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const replaced = at(row, j - 1) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, at(row, j) + 1, at(next, j - 1) + 1));
    }
    row = next;
  }
  return at(row, b.length);
}

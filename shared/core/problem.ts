/** One bad entry of something a person typed, pasted, opened or followed, in words that say how to mend it. */
export interface Problem {
  /** Name of the entry; empty if it is the whole. */
  readonly field: string;
  readonly value: unknown;
  readonly message: string;
}

/** What is refused, and why. */
export type Failure = { readonly problems: readonly Problem[] };

export function failure(field: string, value: unknown, message: string): Failure {
  return { problems: [{ field, value, message }] };
}

/** More problems than anyone reads; the rest is only counted, so that a hostile file stays cheap to refuse. */
export const MAX_PROBLEMS = 20;

const MAX_SHOWN = 40;

/** Line breaks and other control characters, and halves of a character pair. */
const UNPRINTABLE = /[\p{Cc}\p{Cs}]/gu;

export function isPrintable(text: string): boolean {
  return text.search(UNPRINTABLE) < 0;
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
  return {
    field: shortened(name),
    value,
    message: `"${shortened(name)}" is not ${kind}.${didYouMean(name, known) || ' Remove it.'}`,
  };
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
      const replaced = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[b.length]!;
}

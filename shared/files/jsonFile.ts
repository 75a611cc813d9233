import { entryFailure, type Failure, failure, isNot, isRecord, shortened, shown } from '../core/problem.ts';

/** Longest text that is looked at, characters: a session of an hour fits, a file of 10 MB is not ours. */
const LONGEST_TEXT = 5_000_000;

/** What the entry `waybench` of a file can say. */
type FileKind =
  | 'scene'
  | 'session'
  | 'lesson'
  | 'gain sheet'
  | 'snapshots'
  | 'study'
  | 'tolerance study'
  | 'tolerance results';

export type Entries = Record<string, unknown>;

/**
 * Opens text (JSON) or an already parsed value that should be a file of this kind, of this version or an earlier one.
 * Its entries have not been checked yet. They are read alike whichever version of the model wrote them.
 */
export function openFile(
  input: unknown,
  kind: FileKind,
  newest: number,
): { readonly entries: Entries; readonly version: number } | Failure {
  const parsed = typeof input === 'string' ? parse(input) : { value: input };
  if ('problems' in parsed) return parsed;
  const entries = parsed.value;
  if (!isRecord(entries))
    return failure('', entries, `A ${kind} file must contain an object, not ${shown(entries)}.`);
  const { waybench, version } = entries;
  if (waybench !== kind) {
    return failure(
      'waybench',
      waybench,
      `This is not a ${kind} file: its entry "waybench" is ${shown(waybench)} and should be "${kind}".`,
    );
  }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    const message = `${isNot(version, 'a version number')} Versions 1 to ${newest} can be read.`;
    return entryFailure('version', version, message);
  }
  if (version > newest) {
    return failure(
      'version',
      version,
      `This file has version ${shown(version)} and was written by a newer Waybench. This one reads versions up to ${newest}. Update to open it.`,
    );
  }
  const { model, ...others } = entries;
  if (model !== undefined && !(Number.isSafeInteger(model) && (model as number) >= 1))
    return entryFailure(
      'model',
      model,
      `${isNot(model, 'a version of the model')} Give 1 or more, or leave it out.`,
    );
  return { entries: others, version };
}

function parse(text: string): { readonly value: unknown } | Failure {
  if (text.length > LONGEST_TEXT) {
    return failure(
      '',
      shortened(text),
      `The file is too large: the limit is ${LONGEST_TEXT / 1e6} million characters.`,
    );
  }
  try {
    // Some editors put a byte order mark before everything.
    return { value: JSON.parse(text.replace(/^\ufeff/, '')) };
  } catch (error) {
    const reason = error instanceof SyntaxError ? shortened(error.message) : 'it is nested too deeply';
    return failure('', shortened(text), `The file is not valid JSON: ${reason}.`);
  }
}

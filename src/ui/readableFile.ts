/** Largest scene, session, study or gain sheet, bytes. */
export const LARGEST_DOCUMENT = 10e6;
/** Largest recording, bytes: it is read in one piece, and the page waits for it. */
export const LARGEST_RECORDING = 40e6;

/** What kinds of files are by their type, where they are no text. */
const KINDS: readonly (readonly [type: RegExp, kind: string])[] = [
  [/^image\//, 'a picture'],
  [/^(video|audio)\//, 'a recording of sound or pictures'],
  [/pdf$/, 'a PDF document'],
  [/zip|compressed|x-tar/, 'an archive'],
  [/spreadsheet|ms-excel/, 'a spreadsheet; export its table as CSV'],
  [/wordprocessing|msword|opendocument\.text/, 'a text document'],
];
/** A spreadsheet’s type is said of CSV too, on machines that have one. */
const TEXT = /\.(csv|tsv|txt|json)$/i;
/** Text has no such character; it is looked for at the beginning. */
const NO_TEXT = '\0';
const LOOKED_AT = 4096;

/** The text of a file, or in words why it is not read. `accepted` says what could be: it follows. */
export async function readText(
  file: File,
  largest: number,
  accepted: string,
): Promise<{ readonly text: string } | { readonly problem: string }> {
  const kind = TEXT.test(file.name) ? undefined : KINDS.find(([type]) => type.test(file.type))?.[1];
  if (kind !== undefined) return { problem: `This is ${kind}. ${accepted}` };
  if (file.size > largest) {
    const problem = `The file has ${megabytes(file.size)} MB; at most ${largest / 1e6} MB are read. ${accepted}`;
    return { problem };
  }
  try {
    const text = await file.text();
    if (!text.slice(0, LOOKED_AT).includes(NO_TEXT)) return { text };
    return { problem: `This is not a text file. ${accepted}` };
  } catch {
    return { problem: `It could not be read: it has been moved or changed, or it is a folder. ${accepted}` };
  }
}

function megabytes(bytes: number): string {
  return (Math.ceil(bytes / 1e5) / 10).toString();
}

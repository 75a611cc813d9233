import { describe, expect, it } from 'vitest';
import { readText } from '../../../src/ui/readableFile.ts';

const ACCEPTED = 'Scenes can be opened here.';
const read = (content: BlobPart, name: string, type: string, largest = 1000) =>
  readText(new File([content], name, { type }), largest, ACCEPTED);

describe('a file that is given to the page', () => {
  it('is read as text', async () => {
    expect(await read('{"µ": 1}', 'a.json', 'application/json')).toEqual({ text: '{"µ": 1}' });
  });

  it('may be a table that the machine takes for a spreadsheet', async () => {
    expect(await read('a,b', 'a.csv', 'application/vnd.ms-excel')).toEqual({ text: 'a,b' });
  });

  it.each([
    ['a picture', 'photo.png', 'image/png', 'This is a picture. '],
    ['a document', 'sheet.pdf', 'application/pdf', 'This is a PDF document. '],
    ['an archive', 'all.zip', 'application/zip', 'This is an archive. '],
  ])('is told from %s, with what can be opened', async (_kind, name, type, beginning) => {
    expect(await read('x', name, type)).toEqual({ problem: `${beginning}${ACCEPTED}` });
  });

  it('is no text where there are bytes that text does not have', async () => {
    const bytes = new Uint8Array([77, 90, 0, 3]);
    expect(await read(bytes, 'tool.bin', '')).toEqual({ problem: `This is not a text file. ${ACCEPTED}` });
  });

  it('is refused before it is read where it is too large', async () => {
    const large = new File(['x'.repeat(1001)], 'long.csv');
    large.text = () => Promise.reject(new Error('was read'));
    const { problem } = (await readText(large, 1000, ACCEPTED)) as { problem: string };
    expect(problem).toBe(`The file has 0.1 MB; at most 0.001 MB are read. ${ACCEPTED}`);
  });

  it('that cannot be read says so', async () => {
    const gone = new File(['x'], 'gone.json');
    gone.text = () => Promise.reject(new DOMException('gone', 'NotFoundError'));
    expect(await readText(gone, 1000, ACCEPTED)).toMatchObject({
      problem: expect.stringContaining('could not be read'),
    });
  });
});

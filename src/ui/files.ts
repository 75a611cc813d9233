import { LARGEST_DOCUMENT, readText } from './readableFile.ts';

/** Files in and out of the page; nothing leaves the machine. */

/** Offers a text for saving. */
export function saveText(name: string, text: string, type = 'application/json'): void {
  saveBlob(name, new Blob([text], { type }));
}

export function saveBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  saveUrl(name, url);
  // The download has its own hold on the data once the click is through.
  setTimeout(() => URL.revokeObjectURL(url), 0);
}

/** Opens a page in a tab of its own. */
export function openPage(html: string): void {
  const url = URL.createObjectURL(new Blob([html], { type: 'text/html' }));
  // Never revoked: the tab may be reloaded as long as this page lives.
  window.open(url, '_blank');
}

/** Offers for saving what a data or blob URL holds. */
export function saveUrl(name: string, url: string): void {
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
}

/** A file name from a title: letters, digits and hyphens. */
export function fileName(title: string, ending: string): string {
  const plain = title
    .normalize('NFKD')
    .replace(/[^\w\s-]/g, '')
    .trim()
    .replace(/\s+/g, '-')
    .toLowerCase();
  return `${plain || 'waybench'}.${ending}`;
}

/** What a person gives the page to open: its text, or why there is none. */
interface Opener {
  open(name: string, text: string): void;
  refuse(name: string, problem: string): void;
}

const ACCEPTED =
  'Scenes, tuning sessions, studies and lessons (JSON) and gain sheets (CSV or JSON) can be opened here.';

/** Asks for a file. */
export function askForText(opener: Opener): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,.csv,application/json,text/csv';
  input.onchange = () => {
    const file = input.files?.[0];
    if (file) void openFile(file, opener);
  };
  input.click();
}

/** Takes a file that is dropped anywhere on the page, and marks the page while one hovers over it. */
export function takeDrops(opener: Opener): void {
  const mark = (on: boolean) => document.body.classList.toggle('is-dropping', on);
  window.addEventListener('dragover', (event) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    mark(true);
  });
  window.addEventListener('dragleave', (event) => {
    if (event.relatedTarget === null) mark(false);
  });
  window.addEventListener('drop', (event) => {
    mark(false);
    const [file, ...others] = event.dataTransfer?.files ?? [];
    if (!file) return;
    event.preventDefault();
    const isFolder = event.dataTransfer?.items[0]?.webkitGetAsEntry()?.isDirectory === true;
    if (isFolder) opener.refuse(file.name, `This is a folder. Drop one of its files. ${ACCEPTED}`);
    else if (others.length > 0)
      opener.refuse(`${file.name} and ${others.length} more`, `Drop one file at a time. ${ACCEPTED}`);
    else void openFile(file, opener);
  });
}

async function openFile(file: File, opener: Opener): Promise<void> {
  const read = await readText(file, LARGEST_DOCUMENT, ACCEPTED);
  if ('text' in read) opener.open(file.name, read.text);
  else opener.refuse(file.name, read.problem);
}

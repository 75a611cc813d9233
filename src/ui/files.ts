/** Files in and out of the page; nothing leaves the machine. */

/** Offers a text for saving. */
export function saveText(name: string, text: string, type = 'application/json'): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
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

/** Asks for a file; `onText` gets its name and its text. */
export function askForText(onText: (name: string, text: string) => void): void {
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = '.json,.csv,application/json,text/csv';
  input.onchange = () => {
    const file = input.files?.[0];
    if (file) file.text().then((text) => onText(file.name, text));
  };
  input.click();
}

/** Takes a file that is dropped anywhere on the page, and marks the page while one hovers over it. */
export function takeDrops(onText: (name: string, text: string) => void): void {
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
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    file.text().then((text) => onText(file.name, text));
  });
}

import { at } from '../core/at.ts';

/** Comma-separated values as RFC 4180 has them, written in UTF-8 with a byte order mark, which spreadsheets tell it by. */
const BYTE_ORDER_MARK = '\ufeff';

export function writeCsv(rows: readonly (readonly string[])[]): string {
  return `${BYTE_ORDER_MARK}${rows.map((row) => row.map(quoted).join(',')).join('\r\n')}\r\n`;
}

function quoted(cell: string): string {
  return /[",\r\n]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}

/** Cells line by line, whatever separates them; a quote that is never closed ends with the text. Empty lines are left out. */
export function readCsv(text: string, separator: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = '';
  let inQuotes = false;
  const endCell = () => {
    row.push(cell);
    cell = '';
  };
  const endRow = () => {
    endCell();
    if (row.some((each) => each !== '')) rows.push(row);
    row = [];
  };
  const input = text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;
  for (let i = 0; i < input.length; i++) {
    const character = at(input, i);
    if (inQuotes) {
      if (character !== '"') cell += character;
      else if (input[i + 1] === '"') cell += input[i++];
      else inQuotes = false;
    } else if (character === '"' && cell === '') inQuotes = true;
    else if (character === separator) endCell();
    else if (character === '\n') endRow();
    else if (character !== '\r') cell += character;
  }
  endRow();
  return rows;
}

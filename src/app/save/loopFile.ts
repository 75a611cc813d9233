import { writeCsv } from '../../../shared/files/csv.ts';
import type { LoopAnalysis } from '../../../shared/protocol/analysis.ts';
import { bodeSheet } from '../../plot/loop/bodeSheet.ts';
import { svg } from '../../plot/svg.ts';
import { responseRows } from './responseRows.ts';

/** The frequency responses of a loop as the content of a file, and its type. */
export function loopFile(loop: LoopAnalysis, ending: 'csv' | 'svg'): [content: string, type: string] {
  return ending === 'csv'
    ? [writeCsv(responseRows(loop)), 'text/csv']
    : [alone(svg(bodeSheet(loop)).text), 'image/svg+xml'];
}

/** A drawing as a file of its own: with the colours that it takes from the page otherwise. */
function alone(drawing: string): string {
  const page = getComputedStyle(document.documentElement);
  return drawing
    .replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" ')
    .replace(
      /var\((--[\w-]+)(?:,\s*([^()]*))?\)/g,
      (_, name, otherwise = '#000') => page.getPropertyValue(name).trim() || otherwise,
    );
}

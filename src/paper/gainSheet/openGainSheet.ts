import { writeGainSheet, writeGainSheetCsv } from '../../../shared/files/gainSheetFile.ts';
import type { LoopAnalysis } from '../../../shared/protocol/analysis.ts';
import type { GainSheet } from '../../../shared/sheet/gainSheet.ts';
import { fileName, saveText } from '../../ui/files.ts';
import { openPaper } from '../openPaper.ts';
import { gainSheetHtml } from './gainSheetHtml.ts';

/** Shows the sheet to print or save. The analysis is that of the same tuning; without one the sheet has no plots. */
export function openGainSheet(sheet: GainSheet, analysis: LoopAnalysis | null): void {
  const html = gainSheetHtml(sheet, analysis, new Date().toLocaleDateString('en-GB', { dateStyle: 'long' }));
  const save = (ending: string, text: string, type: string) =>
    saveText(fileName(sheet.title, ending), text, type);
  openPaper({
    title: 'Gain sheet',
    html,
    actions: [
      { text: 'Save page', action: () => save('gain-sheet.html', html, 'text/html') },
      {
        text: 'Save JSON',
        action: () => save('gain-sheet.json', writeGainSheet(sheet), 'application/json'),
      },
      { text: 'Save CSV', action: () => save('gain-sheet.csv', writeGainSheetCsv(sheet), 'text/csv') },
    ],
  });
}

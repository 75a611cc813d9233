import type { LoopAnalysis } from '../../shared/analysis.ts';
import type { GainSheet } from '../../shared/gainSheet.ts';
import { writeGainSheet, writeGainSheetCsv } from '../../shared/gainSheetFile.ts';
import { button, element } from '../app/dom.ts';
import { fileName, saveText } from '../app/files.ts';
import { gainSheetHtml } from './gainSheetHtml.ts';
import './sheet.css';

/**
 * Shows the sheet in a dialog at the end of `host`, as it will be printed; from there it is printed or saved. The analysis is that
 * of the same tuning; without one the sheet has no plots. The dialog is gone once it is closed.
 */
export function openGainSheet(
  host: HTMLElement,
  sheet: GainSheet,
  analysis: LoopAnalysis | null,
): HTMLDialogElement {
  const html = gainSheetHtml(sheet, analysis, new Date().toLocaleDateString('en', { dateStyle: 'long' }));
  // A document of its own: the style of the page cannot reach it, and only it is printed. It runs no script.
  const paper = element('iframe', {
    title: 'Gain sheet as printed',
    sandbox: 'allow-same-origin allow-modals',
    srcdoc: html,
    // To be scrolled by the keyboard.
    tabindex: 0,
  });
  const save = (ending: string, text: string, type: string) =>
    saveText(fileName(sheet.title, ending), text, type);
  const dialog = element(
    'dialog',
    { class: 'dialog gain-sheet', 'aria-labelledby': 'gain-sheet-title' },
    element(
      'header',
      {},
      element('h2', { id: 'gain-sheet-title' }, 'Gain sheet'),
      element(
        'div',
        { class: 'dialog-ways' },
        button('Print', () => paper.contentWindow?.print(), { class: 'primary' }),
        button('Save page', () => save('gain-sheet.html', html, 'text/html')),
        button('Save JSON', () => save('gain-sheet.json', writeGainSheet(sheet), 'application/json')),
        button('Save CSV', () => save('gain-sheet.csv', writeGainSheetCsv(sheet), 'text/csv')),
        button('Close', () => dialog.close()),
      ),
    ),
    paper,
  );
  dialog.addEventListener('close', () => dialog.remove());
  host.append(dialog);
  dialog.showModal();
  return dialog;
}

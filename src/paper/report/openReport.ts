import { fileName, openPage, saveText } from '../../ui/files.ts';
import { openPaper } from '../openPaper.ts';
import { reportHtml } from './reportHtml.ts';
import type { ReportInput } from './reportInput.ts';

/** Shows the report to print, to read in a tab of its own, or to save as one file. Nothing leaves the machine. */
export function openReport(input: Omit<ReportInput, 'printed'>): void {
  const html = reportHtml({
    ...input,
    printed: new Date().toLocaleDateString('en-GB', { dateStyle: 'long' }),
  });
  const name = fileName(input.study.job.title, 'report.html');
  openPaper({
    title: 'Report',
    html,
    actions: [
      { text: 'Open in a tab', action: () => openPage(html) },
      { text: 'Save as one file', action: () => saveText(name, html, 'text/html') },
    ],
  });
}

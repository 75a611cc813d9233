import { writeCsv } from '../../../shared/files/csv.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import type { Store } from '../../bench/store.ts';
import type { AnalysisClient } from '../../clients/analysisClient.ts';
import { errorText } from '../../clients/errorText.ts';
import { bodeSheet } from '../../plot/loop/bodeSheet.ts';
import { svg } from '../../plot/svg.ts';
import { fileName, saveBlob, saveText, saveUrl } from '../../ui/files.ts';
import type { Actions } from '../../ui/keys.ts';
import { item, type MenuItem } from '../../ui/menu.ts';
import type { Messages } from '../../ui/messages.ts';
import type { View } from '../view.ts';
import { responseRows } from './responseRows.ts';

interface SaveDataOptions {
  readonly store: Store;
  readonly view: View;
  readonly analysis: AnalysisClient;
  readonly messages: Messages;
  readonly actions: Actions;
}

/** What of the bench can be saved for other programs: the recording in view, the frequency responses, and pictures. */
export function saveItems({ store, view, analysis, messages, actions }: SaveDataOptions): MenuItem[] {
  const nameFor = (what: string, ending: string) => nameOf(store, what, ending);
  const saved = (name: string) => messages.note(`Saved as ${name}.`);
  const text = (name: string, content: string, type: string) => {
    saveText(name, content, type);
    saved(name);
  };
  const picture = (name: string, url: string) => {
    saveUrl(name, url);
    saved(name);
  };
  /** The loop as the gain sheet has it: with the guide sliding. */
  const analysed = async (use: (loop: Awaited<ReturnType<AnalysisClient['analyse']>>) => void) => {
    const { parameters } = store.bench;
    try {
      use(await analysis.analyse(parameters, { ...startingPoint(parameters), friction: 'sliding' }));
    } catch (error) {
      messages.note(`Nothing was saved: ${errorText(error)}`);
    }
  };
  return [
    {
      label: 'Save recording in view (CSV)',
      action: () => {
        const rows = view.recordingRows();
        if (rows) text(nameFor('recording', 'csv'), writeCsv(rows), 'text/csv');
        else messages.note('Nothing was saved: there is no recording yet.');
      },
    },
    {
      label: 'Save frequency responses (CSV)',
      action: () =>
        void analysed((loop) => text(nameFor('loop', 'csv'), writeCsv(responseRows(loop)), 'text/csv')),
    },
    {
      label: 'Save frequency response (SVG)',
      action: () =>
        void analysed((loop) => {
          text(nameFor('loop', 'svg'), alone(svg(bodeSheet(loop)).text), 'image/svg+xml');
        }),
    },
    {
      label: 'Save picture of the charts',
      action: () => picture(nameFor('charts', 'png'), view.chartPicture()),
    },
    { label: 'Save picture of the stage', action: () => picture(nameFor('stage', 'png'), view.picture()) },
    item('Save video of the stage …', actions, 'film'),
  ];
}

/** A video of the stage, once it is recorded. */
export function saveVideo(
  { store, messages }: Pick<SaveDataOptions, 'store' | 'messages'>,
  video: Blob,
  ending: string,
): void {
  const name = nameOf(store, 'stage', ending);
  saveBlob(name, video);
  messages.note(`Saved as ${name}.`);
}

const nameOf = (store: Store, what: string, ending: string) =>
  fileName(`${store.bench.origin.title} ${what}`, ending);

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

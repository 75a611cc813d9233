import { writeCsv } from '../../../shared/files/csv.ts';
import { type LoopAnalysis, startingPoint } from '../../../shared/protocol/analysis.ts';
import type { Store } from '../../bench/store.ts';
import type { AnalysisClient } from '../../clients/analysisClient.ts';
import { errorText } from '../../clients/errorText.ts';
import { fileName, saveBlob, saveText, saveUrl } from '../../ui/files.ts';
import type { Actions } from '../../ui/keys.ts';
import { item, type MenuItem } from '../../ui/menu.ts';
import type { Messages } from '../../ui/messages.ts';
import type { Keeper } from '../kept/keeper.ts';
import type { View } from '../view.ts';
import { withPart } from '../withPart.ts';

interface SaveDataOptions {
  readonly store: Store;
  readonly view: View;
  readonly analysis: AnalysisClient;
  readonly messages: Messages;
  readonly keeper: Keeper;
  readonly actions: Actions;
}

/** What of the bench can be saved for other programs: the recording in view, the frequency responses, and pictures. */
export function saveItems(options: SaveDataOptions): MenuItem[] {
  const { store, view, analysis, messages, actions } = options;
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
  const analysed = async (): Promise<LoopAnalysis | null> => {
    const { parameters } = store.bench;
    try {
      return await analysis.analyse(parameters, { ...startingPoint(parameters), friction: 'sliding' });
    } catch (error) {
      messages.note(`Nothing was saved: ${errorText(error)}`);
      return null;
    }
  };
  const saveLoop = (ending: 'csv' | 'svg') =>
    withPart(options, 'The frequency response', async () => {
      const { loopFile } = await import('./loopFile.ts');
      const loop = await analysed();
      if (loop) text(nameFor('loop', ending), ...loopFile(loop, ending));
    });
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
      action: () => saveLoop('csv'),
    },
    {
      label: 'Save frequency response (SVG)',
      action: () => saveLoop('svg'),
    },
    {
      label: 'Save picture of the charts',
      action: () => picture(nameFor('charts', 'png'), view.chartPicture()),
    },
    {
      label: 'Save picture of the stage',
      action: () =>
        withPart(options, 'The picture of the stage', async () =>
          picture(nameFor('stage', 'png'), await view.picture()),
        ),
    },
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

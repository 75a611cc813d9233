import { DEFAULT_STUDY } from '../../scenes/defaultStudy.ts';
import { PRESETS } from '../../scenes/index.ts';
import { type Failure, problemTexts } from '../../shared/core/problem.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { AS_WRITTEN } from '../../shared/core/sentence.ts';
import { readStudy, writeStudy } from '../../shared/files/studyFile.ts';
import { readStudyLink, writeStudyLink } from '../../shared/files/studyLink.ts';
import type { Study } from '../../shared/study/candidate.ts';
import { errorText } from '../clients/errorText.ts';
import { fileName, saveText } from '../ui/files.ts';
import type { Actions } from '../ui/keys.ts';
import { createMenu, item, type MenuItem } from '../ui/menu.ts';
import type { Messages } from '../ui/messages.ts';
import { showReport } from './showReport.ts';
import { StudyView } from './studyView.ts';

export interface StudyRoomOptions {
  readonly messages: Messages;
  /** Puts the axis of a candidate on the bench and shows it. */
  openOnBench(scene: Scene): void;
  leave(): void;
  /** What the bench does as well, in the same words. */
  readonly common: Pick<Actions, 'openFile' | 'theme' | 'presenter' | 'study'>;
  isDark(): boolean;
  isPresenting(): boolean;
  readonly help: readonly MenuItem[];
}

export interface StudyRoom {
  readonly element: HTMLElement;
  readonly keys: Partial<Actions>;
  setShown(shown: boolean): void;
  /** A study file, or the fragment of a link to one. A bad one is explained, and changes nothing. */
  openText(name: string, text: string): void;
  openLink(fragment: string): void;
}

/** The study with its documents: files, links, the report. */
export function createStudyRoom(options: StudyRoomOptions): StudyRoom {
  const { messages, openOnBench, leave, common, isDark, isPresenting, help } = options;
  const study = () => view.store.state.study;
  const keys = {
    ...common,
    saveScene(): void {
      const name = fileName(study().job.title, 'study.json');
      saveText(name, writeStudy(study()));
      messages.note(`Study saved as ${name}.`);
    },
    async copyLink(): Promise<void> {
      history.replaceState(null, '', `#${writeStudyLink(study())}`);
      try {
        await navigator.clipboard.writeText(location.href);
        messages.note('Link copied. It holds the job, the drives and their gains.');
      } catch {
        messages.note('The link is in the address bar; copy it from there.');
      }
    },
    undo: () => view.store.undo(),
    redo: () => view.store.redo(),
  };
  const report = async () => {
    try {
      const state = await view.judged();
      const { judgement, flips } = state?.verdict ?? {};
      if (state && judgement && flips) showReport(state, { ...judgement, ...flips }, await view.picture());
    } catch (error) {
      messages.problems('There is no report', [], errorText(error));
    }
  };
  const view: StudyView = new StudyView({
    study: DEFAULT_STUDY,
    openOnBench,
    leave,
    report: () => void report(),
    menus: [
      createMenu('File', [
        item('Open …', keys, 'openFile'),
        item('Save study', keys, 'saveScene'),
        item('Copy link', keys, 'copyLink'),
        { label: 'Report', action: () => void report() },
      ]),
      createMenu('View', [
        item('Undo', keys, 'undo'),
        item('Redo', keys, 'redo'),
        item('Presenter size', keys, 'presenter', isPresenting),
        item('Dark', keys, 'theme', isDark),
      ]),
      createMenu('Help', help),
    ],
  });

  function take(name: string, read: { readonly study: Study } | Failure): void {
    if ('study' in read) {
      view.store.open(read.study);
      messages.say(`Opened ${name}: ${read.study.job.title}`);
    } else {
      messages.problems(
        `${name} was not opened`,
        problemTexts(read.problems, AS_WRITTEN),
        'The study is unchanged. What is wrong:',
      );
    }
  }

  return {
    element: view.element,
    get keys() {
      return { ...keys, ...view.keys };
    },
    setShown: (shown) => view.setShown(shown),
    openText: (name, text) => take(name, readStudy(text, PRESETS)),
    openLink: (fragment) => take('The link', readStudyLink(fragment, PRESETS)),
  };
}

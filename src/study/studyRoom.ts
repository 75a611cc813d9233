import { DEFAULT_STUDY } from '../../scenes/defaultStudy.ts';
import { PRESETS } from '../../scenes/index.ts';
import { type Failure, problemTexts } from '../../shared/core/problem.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { AS_WRITTEN } from '../../shared/core/sentence.ts';
import { readStudy, writeStudy } from '../../shared/files/studyFile.ts';
import { readStudyLink, writeStudyLink } from '../../shared/files/studyLink.ts';
import type { Study } from '../../shared/study/candidate.ts';
import type { Timeline } from '../bench/undo.ts';
import { errorText } from '../clients/errorText.ts';
import { copyLink } from '../ui/copyLink.ts';
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
  readonly common: Pick<Actions, 'openFile' | 'theme' | 'currents' | 'presenter' | 'study'>;
  isDark(): boolean;
  isRms(): boolean;
  isPresenting(): boolean;
  readonly help: readonly MenuItem[];
  /** Something of the study is otherwise. */
  onChange(): void;
}

/** The study with its documents: files, links, the report. */
export class StudyRoom {
  readonly #options: StudyRoomOptions;
  readonly #view: StudyView;
  /** What keys and menus set off in every part of the study. */
  readonly #actions;

  constructor(options: StudyRoomOptions) {
    this.#options = options;
    this.#actions = {
      ...options.common,
      currents: () => {
        options.common.currents();
        this.#view.store.refresh();
      },
      saveScene: () => this.#save(),
      copyLink: () => void this.#copyLink(),
      undo: () => this.#view.store.undo(),
      redo: () => this.#view.store.redo(),
    };
    this.#view = new StudyView({
      study: DEFAULT_STUDY,
      openOnBench: options.openOnBench,
      leave: options.leave,
      report: () => void this.#report(),
      menus: this.#menus(),
    });
    let { study } = this.#view.store.state;
    this.#view.store.subscribe((state) => {
      if (state.study === study) return;
      study = state.study;
      options.onChange();
    });
  }

  get element(): HTMLElement {
    return this.#view.element;
  }

  get heading(): HTMLElement {
    return this.#view.heading;
  }

  get keys(): Partial<Actions> {
    return { ...this.#actions, ...this.#view.keys };
  }

  setShown(shown: boolean): void {
    this.#view.setShown(shown);
  }

  /** A study file. A bad one is explained, and changes nothing. */
  openText(name: string, text: string): void {
    this.#take(name, readStudy(text, PRESETS));
  }

  /** The fragment of a link to a study. */
  openLink(fragment: string): void {
    this.#take('The link', readStudyLink(fragment, PRESETS));
  }

  /** The study with so many of its steps, to be kept. */
  kept(depth: number): { readonly title: string; readonly text: string; readonly steps: Timeline<Study> } {
    const study = this.#study;
    return { title: study.job.title, text: writeStudy(study), steps: this.#view.store.timeline(depth) };
  }

  /** Goes on with a study that was kept: with its steps, or as a file of any version without them. */
  restore(text: string, steps: Timeline<Study> | null): void {
    if (steps) this.#view.store.restore(steps);
    else this.openText('The earlier study', text);
  }

  get #study(): Study {
    return this.#view.store.state.study;
  }

  #menus(): HTMLElement[] {
    const actions = this.#actions;
    const { isDark, isRms, isPresenting, help } = this.#options;
    return [
      createMenu('File', [
        item('Open …', actions, 'openFile'),
        item('Save study', actions, 'saveScene'),
        item('Copy link', actions, 'copyLink'),
        { label: 'Report', action: () => void this.#report() },
      ]),
      createMenu('View', [
        item('Undo', actions, 'undo'),
        item('Redo', actions, 'redo'),
        item('Presenter size', actions, 'presenter', isPresenting),
        item('Dark', actions, 'theme', isDark),
        item('Currents as RMS', actions, 'currents', isRms),
      ]),
      createMenu('Help', help),
    ];
  }

  #save(): void {
    const name = fileName(this.#study.job.title, 'study.json');
    saveText(name, writeStudy(this.#study));
    this.#options.messages.note(`Study saved as ${name}.`);
  }

  #copyLink(): Promise<void> {
    const copied = 'Link copied. It holds the job, the drives and their gains.';
    return copyLink(writeStudyLink(this.#study), this.#options.messages, copied);
  }

  async #report(): Promise<void> {
    try {
      const state = await this.#view.judged();
      const { judgement, flips } = state?.verdict ?? {};
      if (state && judgement && flips)
        showReport(state, { ...judgement, ...flips }, await this.#view.picture());
    } catch (error) {
      this.#options.messages.problems('There is no report', [], errorText(error));
    }
  }

  #take(name: string, read: { readonly study: Study } | Failure): void {
    const { messages } = this.#options;
    if ('study' in read) {
      this.#view.store.open(read.study);
      messages.say(`Opened ${name}: ${read.study.job.title}`);
    } else {
      messages.problems(
        `${name} was not opened`,
        problemTexts(read.problems, AS_WRITTEN),
        'The study is unchanged. What is wrong:',
      );
    }
  }
}

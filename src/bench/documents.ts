import { SHELF } from '../../scenes/index.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import { type Problem, problemTexts } from '../../shared/core/problem.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { AS_WRITTEN } from '../../shared/core/sentence.ts';
import { otherModelText } from '../../shared/files/otherModel.ts';
import { readScene, writeScene } from '../../shared/files/sceneFile.ts';
import { writeLink } from '../../shared/files/sceneLink.ts';
import type { TuningSession } from '../../shared/protocol/axis.ts';
import type { ToleranceStudy } from '../../shared/tolerance/toleranceStudy.ts';
import { copyLink } from '../ui/copyLink.ts';
import { fileName, saveText } from '../ui/files.ts';
import type { Messages } from '../ui/messages.ts';

interface DocumentSinks {
  readonly messages: Messages;
  openScene(scene: Scene, label: string): void;
  replay(session: TuningSession): void;
  /** What the gains of a sheet are laid over. */
  parameters(): Parameters;
  useGains(changes: ParameterChanges, label: string): void;
  openStudy(name: string, text: string): void;
  openTolerance(study: ToleranceStudy, label: string): void;
  openLesson(name: string, text: string): void;
}

/** Scenes, tuning sessions and gain sheets as files, scenes as links. A bad one is explained, and changes nothing. */
export class Documents {
  readonly #sinks: DocumentSinks;

  constructor(sinks: DocumentSinks) {
    this.#sinks = sinks;
  }

  saveScene(scene: Scene): void {
    const name = fileName(scene.title, 'scene.json');
    saveText(name, writeScene(scene));
    this.#sinks.messages.note(`Scene saved as ${name}.`);
  }

  async saveSession(session: TuningSession): Promise<void> {
    const { writeSession } = await import('../../shared/files/sessionFile.ts');
    const name = fileName(session.scene.title, 'session.json');
    saveText(name, writeSession(session));
    this.#sinks.messages.note(`Tuning session saved as ${name}.`);
  }

  copyLink(scene: Scene): Promise<void> {
    const copied = 'Link copied. It holds the scene and every change.';
    return copyLink(writeLink(scene, SHELF), this.#sinks.messages, copied);
  }

  /** Opens a scene, a session, a gain sheet, a study, a tolerance study or a lesson, whichever the text is. */
  async open(name: string, text: string): Promise<void> {
    const otherModel = otherModelText(text);
    if (otherModel) this.#sinks.messages.note(`${name}: ${otherModel}`);
    switch (kindOf(text)) {
      case 'study':
        this.#sinks.openStudy(name, text);
        break;
      case 'tolerance study':
        await this.#openTolerance(name, text);
        break;
      case 'lesson':
        this.#sinks.openLesson(name, text);
        break;
      case 'gain sheet':
        await this.#openGainSheet(name, text);
        break;
      case 'session':
        await this.#openSession(name, text);
        break;
      case 'scene':
        this.#openScene(name, text);
    }
  }

  /** Says why there is no text of a file to open. */
  refuse(name: string, problem: string): void {
    this.#say(name, [problem]);
  }

  async #openGainSheet(name: string, text: string): Promise<void> {
    const { gainsFromSheet } = await import('../../shared/files/gainSheetFile.ts');
    const read = gainsFromSheet(text, this.#sinks.parameters());
    if ('changes' in read) this.#sinks.useGains(read.changes, name);
    else this.#refuseAll(name, read.problems);
  }

  async #openTolerance(name: string, text: string): Promise<void> {
    const { readTolerance } = await import('../../shared/files/toleranceFile.ts');
    const read = readTolerance(text, SHELF);
    if ('study' in read) this.#sinks.openTolerance(read.study, `Opened ${name}`);
    else this.#refuseAll(name, read.problems);
  }

  async #openSession(name: string, text: string): Promise<void> {
    const { readSession } = await import('../../shared/files/sessionFile.ts');
    const read = readSession(text, SHELF);
    if ('session' in read) this.#sinks.replay(read.session);
    else this.#refuseAll(name, read.problems);
  }

  #openScene(name: string, text: string): void {
    const read = readScene(text, SHELF);
    if ('scene' in read) this.#sinks.openScene(read.scene, `Opened ${name}`);
    else this.#refuseAll(name, read.problems);
  }

  #refuseAll(name: string, problems: readonly Problem[]): void {
    this.#say(name, problemTexts(problems, AS_WRITTEN));
  }

  #say(name: string, problems: readonly string[]): void {
    const consequence = 'The bench is unchanged. What is wrong with the file:';
    this.#sinks.messages.problems(`${name} was not opened`, problems, consequence);
  }
}

const NAMED = ['session', 'gain sheet', 'study', 'tolerance study', 'lesson'] as const;
type Named = (typeof NAMED)[number];

/** What a text says it is. What is no JSON can only be the table of a gain sheet. */
export function kindOf(text: string): 'scene' | Named {
  if (!/^\s*[{[]/.test(text)) return 'gain sheet';
  const named = /"waybench"\s*:\s*"([\w ]+)"/.exec(text.slice(0, 200))?.[1];
  return NAMED.find((kind) => kind === named) ?? 'scene';
}

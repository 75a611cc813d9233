import { SHELF } from '../../scenes/index.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import { type Problem, problemTexts } from '../../shared/core/problem.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { AS_WRITTEN } from '../../shared/core/sentence.ts';
import { readScene, writeScene } from '../../shared/files/sceneFile.ts';
import { writeLink } from '../../shared/files/sceneLink.ts';
import { readSession, writeSession } from '../../shared/files/sessionFile.ts';
import type { TuningSession } from '../../shared/protocol/axis.ts';
import { fileName, saveText } from '../ui/files.ts';
import type { Messages } from '../ui/messages.ts';

export interface DocumentSinks {
  readonly messages: Messages;
  openScene(scene: Scene, label: string): void;
  replay(session: TuningSession): void;
  /** What the gains of a sheet are laid over. */
  parameters(): Parameters;
  useGains(changes: ParameterChanges, label: string): void;
  openStudy(name: string, text: string): void;
}

/** Scenes, tuning sessions and gain sheets as files, scenes as links. A bad one is explained, and changes nothing. */
export function createDocuments({
  messages,
  openScene,
  replay,
  parameters,
  useGains,
  openStudy,
}: DocumentSinks) {
  return {
    saveScene(scene: Scene): void {
      const name = fileName(scene.title, 'scene.json');
      saveText(name, writeScene(scene));
      messages.note(`Scene saved as ${name}.`);
    },

    saveSession(session: TuningSession): void {
      const name = fileName(session.scene.title, 'session.json');
      saveText(name, writeSession(session));
      messages.note(`Tuning session saved as ${name}.`);
    },

    /** Opens a scene, a session, a gain sheet or a study, whichever the text is. */
    async open(name: string, text: string): Promise<void> {
      const kind = kindOf(text);
      if (kind === 'study') {
        openStudy(name, text);
        return;
      }
      if (kind === 'gain sheet') {
        const { gainsFromSheet } = await import('../../shared/files/gainSheetFile.ts');
        const read = gainsFromSheet(text, parameters());
        if ('changes' in read) useGains(read.changes, name);
        else refuse(name, read.problems);
        return;
      }
      if (kind === 'session') {
        const read = readSession(text, SHELF);
        if ('session' in read) replay(read.session);
        else refuse(name, read.problems);
        return;
      }
      const read = readScene(text, SHELF);
      if ('scene' in read) openScene(read.scene, `Opened ${name}`);
      else refuse(name, read.problems);
    },

    async copyLink(scene: Scene): Promise<void> {
      history.replaceState(null, '', `#${writeLink(scene, SHELF)}`);
      try {
        await navigator.clipboard.writeText(location.href);
        messages.note('Link copied. It holds the scene and every change.');
      } catch {
        messages.note('The link is in the address bar; copy it from there.');
      }
    },
  };

  function refuse(name: string, problems: readonly Problem[]): void {
    messages.problems(
      `${name} was not opened`,
      problemTexts(problems, AS_WRITTEN),
      'The bench is unchanged. What is wrong with the file:',
    );
  }
}

/** What a text says it is. What is no JSON can only be the table of a gain sheet. */
export function kindOf(text: string): 'scene' | 'session' | 'gain sheet' | 'study' {
  if (!/^\s*[{[]/.test(text)) return 'gain sheet';
  const named = /"waybench"\s*:\s*"(session|gain sheet|study)"/.exec(text.slice(0, 200))?.[1];
  return named === 'session' || named === 'gain sheet' || named === 'study' ? named : 'scene';
}

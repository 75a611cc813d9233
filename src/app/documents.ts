import { KITS, SCENES } from '../../scenes/index.ts';
import { writeLink } from '../../shared/link.ts';
import type { TuningSession } from '../../shared/protocol.ts';
import type { Scene } from '../../shared/scene.ts';
import { readScene, writeScene } from '../../shared/sceneFile.ts';
import { readSession, writeSession } from '../../shared/sessionFile.ts';
import { fileName, saveText } from './files.ts';
import type { Messages } from './messages.ts';

export interface DocumentSinks {
  readonly messages: Messages;
  openScene(scene: Scene, words: string): void;
  replay(session: TuningSession): void;
}

/** Scenes and tuning sessions as files and links. A bad one is explained, and changes nothing. */
export function createDocuments({ messages, openScene, replay }: DocumentSinks) {
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

    /** Opens a scene or a session, whichever the text is. */
    open(name: string, text: string): void {
      if (/"waybench"\s*:\s*"session"/.test(text.slice(0, 200))) {
        const read = readSession(text, KITS);
        if ('session' in read) replay(read.session);
        else refuse(name, read.problems);
        return;
      }
      const read = readScene(text, KITS);
      if ('scene' in read) openScene(read.scene, `Opened ${name}`);
      else refuse(name, read.problems);
    },

    async copyLink(scene: Scene): Promise<void> {
      history.replaceState(null, '', `#${writeLink(scene, SCENES)}`);
      try {
        await navigator.clipboard.writeText(location.href);
        messages.note('Link copied. It holds the scene and every change.');
      } catch {
        messages.note('The link is in the address bar; copy it from there.');
      }
    },
  };

  function refuse(name: string, problems: Parameters<Messages['problems']>[1]): void {
    messages.problems(`${name} was not opened`, problems, 'The bench is as it was. What has to be mended:');
  }
}

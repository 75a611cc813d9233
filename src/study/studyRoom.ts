import type { Scene } from '../../shared/scene.ts';
import { element } from '../app/dom.ts';
import type { Actions } from '../app/keys.ts';
import type { MenuItem } from '../app/menu.ts';
import type { Messages } from '../app/messages.ts';

export interface StudyRoomOptions {
  readonly messages: Messages;
  openOnBench(scene: Scene): void;
  leave(): void;
  readonly common: Pick<Actions, 'openFile' | 'theme' | 'presenter' | 'study'>;
  isDark(): boolean;
  isPresenting(): boolean;
  readonly help: readonly MenuItem[];
}

export interface StudyRoom {
  readonly element: HTMLElement;
  readonly keys: Partial<Actions>;
  setShown(shown: boolean): void;
  openText(name: string, text: string): void;
  openLink(fragment: string): void;
}

export function createStudyRoom({ common }: StudyRoomOptions): StudyRoom {
  return { element: element('div'), keys: common, setShown() {}, openText() {}, openLink() {} };
}

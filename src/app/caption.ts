import type { Scene } from '../../shared/core/scene.ts';
import { element, setText } from '../ui/dom.ts';
import { inPanelText } from '../ui/fields/label.ts';

export interface Caption {
  show(scene: Scene): void;
  /** Sentences about the set-up that is probably not what was meant. Returns those that are new. */
  warn(warnings: readonly string[]): string[];
}

/** Title of the scene, what to look for in it, and what is odd about its set-up. */
export function createCaption(host: HTMLElement): Caption {
  const title = element('h2', { class: 'visually-hidden' });
  const lookFor = element('p');
  const count = element('summary');
  const list = element('ul');
  const warnings = element('details', { class: 'warnings', hidden: true }, count, list);
  host.append(title, lookFor, warnings);
  let shown: readonly string[] = [];

  return {
    show(scene) {
      setText(title, scene.title);
      setText(lookFor, scene.lookFor);
    },
    warn(sentences) {
      if (sentences.join() === shown.join()) return [];
      const fresh = sentences.filter((sentence) => !shown.includes(sentence)).map(inPanelText);
      shown = sentences;
      warnings.hidden = sentences.length === 0;
      setText(count, sentences.length === 1 ? '1 warning' : `${sentences.length} warnings`);
      list.replaceChildren(...sentences.map((sentence) => element('li', {}, inPanelText(sentence))));
      return fresh;
    },
  };
}

import './caption.css';
import { PRESETS, SCENES } from '../../scenes/index.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { lowered } from '../../shared/verdict/text.ts';
import { basedOn } from '../bench/presets.ts';
import { element, setText } from '../ui/dom.ts';

/** Title of the scene, what to look for in it, what its drive is based on, and what is odd about its set-up. */
export class Caption {
  readonly #title = element('h2', { class: 'visually-hidden' });
  readonly #lookFor = element('p');
  readonly #changes = new FoldedList('caption-list');
  readonly #warnings = new FoldedList('caption-list warnings');
  #warned: readonly string[] = [];

  constructor(host: HTMLElement) {
    host.append(this.#title, this.#lookFor, this.#changes.element, this.#warnings.element);
  }

  /** The scene as it is set now. */
  show(scene: Scene): void {
    setText(this.#title, scene.title);
    setText(this.#lookFor, otherDrive(scene) ?? scene.lookFor);
    const { summary, changes } = basedOn(scene, PRESETS) ?? { summary: '', changes: [] };
    this.#changes.show(summary, changes);
  }

  /** Sentences about the set-up that is probably not what was meant. Returns those that are new. */
  warn(sentences: readonly string[]): string[] {
    if (sentences.join() === this.#warned.join()) return [];
    const fresh = sentences.filter((sentence) => !this.#warned.includes(sentence));
    this.#warned = sentences;
    const count = sentences.length === 1 ? '1 warning' : `${sentences.length} warnings`;
    this.#warnings.show(count, sentences);
    return fresh;
  }
}

/** What a scene is to show, its own drive shows: of another that would be untrue. Null for its own, and for a scene not of the shelf. */
function otherDrive({ id, preset }: Scene): string | null {
  const own = SCENES.find((scene) => scene.id === id)?.preset ?? null;
  if (own === null || preset === null || own === preset) return null;
  const [shown, meant] = [PRESETS[preset], PRESETS[own]];
  return shown && meant
    ? `${shown.title} in a scene made for ${lowered(meant.title)}: compare the two under the same conditions.`
    : null;
}

/** One line that unfolds into a list; hidden while the list is empty. */
class FoldedList {
  readonly element: HTMLDetailsElement;
  readonly #summary = element('summary');
  readonly #list = element('ul');
  #shown: readonly string[] = [];

  constructor(className: string) {
    this.element = element('details', { class: className, hidden: true }, this.#summary, this.#list);
  }

  show(summary: string, items: readonly string[]): void {
    setText(this.#summary, summary);
    if (items.join('\n') === this.#shown.join('\n')) return;
    this.#shown = items;
    this.element.hidden = items.length === 0;
    this.#list.replaceChildren(...items.map((item) => element('li', {}, item)));
  }
}

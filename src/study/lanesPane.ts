import { element } from '../app/dom.ts';
import type { Actions } from '../app/keys.ts';
import { LanesView } from '../lanes/lanesView.ts';
import { tuningWords } from '../lanes/tuningWords.ts';
import { watchChanges } from './changes.ts';
import type { Pane, StudyActions, StudyState } from './state.ts';

export interface LanesPane extends Pane {
  setShown(shown: boolean): void;
  /** What the keyboard sets off while it is shown. */
  readonly keys: Partial<Actions>;
  /** The stage with all lanes as a PNG data URL; null before they were first shown. */
  picture(): string | null;
}

/** All lanes side by side, running in lockstep. Nothing of it is set up before it is first shown. */
export function createLanesPane(actions: StudyActions): LanesPane {
  const root = element('div', { class: 'lanes-pane' });
  let view: LanesView | null = null;
  let state: StudyState | null = null;
  let isShown = false;
  const isNew = watchChanges();

  function update(): void {
    if (!state || !isShown) return;
    if (!view) {
      view = new LanesView((index) => actions.openOnBench(index));
      root.append(view.element);
    }
    const { study, lanes } = state;
    const { peakSensitivity } = study.job.values;
    if (
      !isNew(peakSensitivity, ...lanes.flatMap(({ letter, scene, choice }) => [letter, scene, choice.gains]))
    )
      return;
    view.show(
      lanes.map(({ letter, title, scene, choice }) => ({
        letter,
        title,
        scene,
        tuned: choice.gains !== null,
      })),
      tuningWords(lanes, peakSensitivity),
    );
  }

  return {
    element: root,
    show(is) {
      state = is;
      update();
    },
    setShown(shown) {
      isShown = shown;
      update();
      view?.setShown(shown);
    },
    get keys() {
      return view?.keys ?? {};
    },
    picture: () => view?.picture() ?? null,
  };
}

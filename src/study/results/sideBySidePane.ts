import { CandidatesView } from '../../sideBySide/sideBySideView.ts';
import { tuningText } from '../../sideBySide/tuningText.ts';
import { watchChanges } from '../../studyState/changes.ts';
import type { Pane, StudyActions, StudyState } from '../../studyState/state.ts';
import { element } from '../../ui/dom.ts';
import type { Actions } from '../../ui/keys.ts';

interface CandidatesPane extends Pane {
  setShown(shown: boolean): void;
  /** What the keyboard sets off while it is shown. */
  readonly keys: Partial<Actions>;
  /** The stage with all candidates as a PNG data URL; null before they were first shown. */
  picture(): string | null;
}

/** All candidates side by side, running in lockstep. Nothing of it is set up before it is first shown. */
export function createCandidatesPane(actions: StudyActions): CandidatesPane {
  const root = element('div', { class: 'candidates-pane' });
  let view: CandidatesView | null = null;
  let state: StudyState | null = null;
  let isShown = false;
  const isNew = watchChanges();

  function update(): void {
    if (!state || !isShown) return;
    if (!view) {
      view = new CandidatesView((index) => actions.openOnBench(index));
      root.append(view.element);
    }
    const { study, candidates } = state;
    const { peakSensitivity } = study.job.values;
    if (
      !isNew(
        peakSensitivity,
        ...candidates.flatMap(({ letter, scene, choice }) => [letter, scene, choice.gains]),
      )
    )
      return;
    view.show(
      candidates.map(({ letter, title, scene, choice }) => ({
        letter,
        title,
        scene,
        tuned: choice.gains !== null,
      })),
      tuningText(candidates, peakSensitivity),
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

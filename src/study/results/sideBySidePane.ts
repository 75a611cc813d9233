import { scanScene } from '../../../shared/study/scanScene.ts';
import { CandidatesView } from '../../sideBySide/sideBySideView.ts';
import { tuningText } from '../../sideBySide/tuningText.ts';
import { watchChanges } from '../../studyState/changes.ts';
import type { Pane, StudyActions, StudyState } from '../../studyState/state.ts';
import { element } from '../../ui/dom.ts';
import type { Actions } from '../../ui/keys.ts';
import { createSegmented } from '../../ui/segmented.ts';

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
  // A job with a scan opens on it.
  const motion = createSegmented('Motion that is shown', ['scan', 'moves'], () => update());
  const motionRow = element(
    'div',
    { class: 'candidates-scale', hidden: true },
    element('span', {}, 'Motion'),
    motion.element,
  );
  let view: CandidatesView | null = null;
  let state: StudyState | null = null;
  let isShown = false;
  const isNew = watchChanges();

  function update(): void {
    if (!state || !isShown) return;
    if (!view) {
      view = new CandidatesView((index) => actions.openOnBench(index));
      root.append(view.element);
      view.addControl(motionRow);
    }
    const { study, candidates } = state;
    const { peakSensitivity, rippleLimit } = study.job.values;
    motionRow.hidden = rippleLimit === 0;
    const isScan = rippleLimit > 0 && motion.value === 'scan';
    if (
      !isNew(
        peakSensitivity,
        study.job,
        isScan,
        state.units,
        ...candidates.flatMap(({ letter, scene, choice }) => [letter, scene, choice.gains]),
      )
    )
      return;
    view.show(
      candidates.map(({ letter, title, scene, choice }) => ({
        letter,
        title,
        scene: isScan ? scanScene(study.job, scene) : scene,
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

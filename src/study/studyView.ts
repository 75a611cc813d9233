import './study.css';
import { KITS } from '../../scenes/index.ts';
import type { Scene } from '../../shared/scene.ts';
import type { Study } from '../../shared/study/lane.ts';
import { button, element } from '../app/dom.ts';
import type { Actions } from '../app/keys.ts';
import { createSegmented } from '../app/segmented.ts';
import { createAccuracyPane } from './accuracyPane.ts';
import { createHeatPane } from './heatPane.ts';
import { createJobPane } from './jobPane.ts';
import { createLanesPane } from './lanesPane.ts';
import { createSimulateBar } from './simulateBar.ts';
import { createSizingPane } from './sizingPane.ts';
import type { Pane } from './state.ts';
import { StudyDesk } from './studyDesk.ts';
import { StudyRun } from './studyRun.ts';
import { StudyStore } from './studyStore.ts';
import { createVerdictPane } from './verdictPane.ts';

export interface StudyViewOptions {
  readonly study: Study;
  /** Puts an axis on the bench and shows it. */
  openOnBench(scene: Scene): void;
  /** Shows the bench again, as it was left. */
  leave(): void;
  report(): void;
  /** What stands at the end of the bar. */
  readonly menus: readonly HTMLElement[];
}

const PARTS = ['Job', 'Sizing', 'Side by side', 'Heat', 'Accuracy', 'Verdict'] as const;
type Part = (typeof PARTS)[number];

/** The whole of a study: a bar, and one of its parts at a time. */
export class StudyView {
  readonly element: HTMLElement;
  readonly store: StudyStore;
  readonly #panes: Readonly<Record<Part, Pane>>;
  readonly #lanes;
  readonly #parts;
  readonly #host = element('main', { class: 'study-part' });
  #shownPart: Part | null = null;

  constructor({ study, openOnBench, leave, report, menus }: StudyViewOptions) {
    this.store = new StudyStore(study, KITS);
    const run = new StudyRun(this.store);
    const actions = new StudyDesk(this.store, run, KITS, openOnBench);
    this.#lanes = createLanesPane(actions);
    this.#panes = {
      Job: createJobPane(actions),
      Sizing: createSizingPane(actions),
      'Side by side': this.#lanes,
      Heat: createHeatPane(actions),
      Accuracy: createAccuracyPane(actions),
      Verdict: createVerdictPane(actions, { onReport: report }),
    };
    this.#parts = createSegmented('Part of the study', PARTS, () => this.#showPart());
    const simulate = createSimulateBar(actions);
    this.element = element(
      'div',
      { class: 'study' },
      element(
        'header',
        { class: 'bar study-bar' },
        element('h1', {}, 'Waybench'),
        this.#parts.element,
        simulate.element,
        element('div', { class: 'bar-menus' }, button('Back to the bench', leave), ...menus),
      ),
      this.#host,
    );
    this.store.subscribe((state) => {
      simulate.show(state);
      if (this.#shownPart) this.#panes[this.#shownPart].show(state);
    });
    simulate.show(this.store.state);
  }

  setShown(shown: boolean): void {
    this.element.hidden = !shown;
    if (shown) this.#showPart();
    else this.#hidePart();
  }

  /** What the keyboard sets off in the part that is shown. */
  get keys(): Partial<Actions> {
    return this.#shownPart === 'Side by side' ? this.#lanes.keys : {};
  }

  /** The stage with all lanes as a PNG data URL, for which they come to sight for a moment. Null where there is no 3D picture. */
  async picture(): Promise<string | null> {
    const present = this.#parts.value;
    this.#parts.choose('Side by side');
    await nextRefresh();
    await nextRefresh();
    const picture = this.#lanes.picture();
    this.#parts.choose(present);
    return picture;
  }

  #showPart(): void {
    const part = this.#parts.value;
    if (part === this.#shownPart) return;
    this.#hidePart();
    const pane = this.#panes[part];
    this.#shownPart = part;
    this.#host.setAttribute('data-part', part);
    if (!pane.element.isConnected) this.#host.append(pane.element);
    pane.element.hidden = false;
    this.#host.scrollTo(0, 0);
    pane.show(this.store.state);
    pane.setShown?.(true);
  }

  #hidePart(): void {
    if (!this.#shownPart) return;
    const pane = this.#panes[this.#shownPart];
    pane.setShown?.(false);
    pane.element.hidden = true;
    this.#shownPart = null;
  }
}

function nextRefresh(): Promise<unknown> {
  return new Promise(requestAnimationFrame);
}

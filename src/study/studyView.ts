import './study.css';
import { PRESETS } from '../../scenes/index.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { setUnitSystem } from '../../shared/core/unitSystem.ts';
import type { Study } from '../../shared/study/candidate.ts';
import { ConfidenceRun } from '../studyState/confidenceRun.ts';
import { findKept, keepResults } from '../studyState/keptResults.ts';
import { lookForOutcomes } from '../studyState/outcomeSearch.ts';
import { findShipped, type SimulatedStudy } from '../studyState/shippedResults.ts';
import type { Pane, StudyState } from '../studyState/state.ts';
import { StudyDesk } from '../studyState/studyDesk.ts';
import { StudyRun } from '../studyState/studyRun.ts';
import { StudyStore } from '../studyState/studyStore.ts';
import { VerdictRun } from '../studyState/verdictRun.ts';
import { button, element } from '../ui/dom.ts';
import type { Actions } from '../ui/keys.ts';
import { createSegmented } from '../ui/segmented.ts';
import { JobPane } from './job/jobPane.ts';
import { AccuracyPane } from './results/accuracyPane.ts';
import { HeatPane } from './results/heatPane.ts';
import { createCandidatesPane } from './results/sideBySidePane.ts';
import { VerdictPane } from './results/verdictPane.ts';
import { createSimulateBar } from './simulateBar.ts';
import { createSizingPane } from './sizing/sizingPane.ts';

interface StudyViewOptions {
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

async function loadShipped(): Promise<SimulatedStudy> {
  const { default: simulated } = await import('../../scenes/simulated/defaultStudy.json');
  return simulated as unknown as SimulatedStudy;
}

/** The whole of a study: a bar, and one of its parts at a time. */
export class StudyView {
  readonly element: HTMLElement;
  /** Has the focus when the study is opened. */
  readonly heading = element('h1', { tabindex: -1, 'aria-label': 'Waybench: which drive?' }, 'Waybench');
  readonly store: StudyStore;
  readonly #run: StudyRun;
  readonly #panes: Readonly<Record<Part, Pane>>;
  readonly #verdict: VerdictRun;
  readonly #confidence: ConfidenceRun;
  readonly #candidates;
  readonly #parts;
  readonly #host = element('main', { class: 'study-part' });
  #shownPart: Part | null = null;

  constructor({ study, openOnBench, leave, report, menus }: StudyViewOptions) {
    this.store = new StudyStore(study, PRESETS);
    keepResults(this.store);
    lookForOutcomes(this.store, [findShipped(loadShipped), findKept]);
    this.#run = new StudyRun(this.store);
    this.#verdict = new VerdictRun(this.store);
    this.#confidence = new ConfidenceRun(this.store);
    const actions = new StudyDesk(
      this.store,
      this.#run,
      this.#verdict,
      this.#confidence,
      PRESETS,
      openOnBench,
    );
    this.#candidates = createCandidatesPane(actions);
    this.#panes = {
      Job: new JobPane(actions),
      Sizing: createSizingPane(actions),
      'Side by side': this.#candidates,
      Heat: new HeatPane(actions),
      Accuracy: new AccuracyPane(actions),
      Verdict: new VerdictPane(actions, { onReport: report }),
    };
    this.#parts = createSegmented('Part of the study', PARTS, () => this.#showPart());
    const simulate = createSimulateBar(actions);
    this.element = element(
      'div',
      { class: 'study' },
      element(
        'header',
        { class: 'bar study-bar' },
        this.heading,
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
    this.#run.keepWorkers(shown);
    // The bench is metric.
    setUnitSystem(shown ? this.store.state.units : 'metric');
    if (shown) this.#showPart();
    else this.#hidePart();
  }

  /** What the keyboard sets off in the part that is shown. */
  get keys(): Partial<Actions> {
    return this.#shownPart === 'Side by side' ? this.#candidates.keys : {};
  }

  /**
   * The study with the whole verdict on it; while that is worked out the bar says so, and a person may cancel it. Null when they do, or
   * when a report is due already.
   * @throws Error when the verdict cannot be worked out
   */
  async judged(): Promise<StudyState | null> {
    if (this.store.state.isReportDue) return null;
    this.store.setReportDue(true);
    try {
      await this.#verdict.whole();
      await this.#confidence.enough();
      return this.store.state.isReportDue ? this.store.state : null;
    } finally {
      this.store.setReportDue(false);
    }
  }

  /** The stage with all candidates as a PNG data URL, for which they come to sight for a moment. Null where there is no 3D picture. */
  async picture(): Promise<string | null> {
    const present = this.#parts.value;
    this.#parts.choose('Side by side');
    await nextRefresh();
    await nextRefresh();
    const picture = this.#candidates.picture();
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

import { DEFAULT_STUDY } from '../../../scenes/defaultStudy.ts';
import '../parts/parts.css';
import './job.css';
import { jobSentence } from '../../../shared/study/jobSentence.ts';
import { motionAsked } from '../../../shared/study/motionAsked.ts';
import { svg } from '../../plot/svg.ts';
import { watchChanges } from '../../studyState/changes.ts';
import type { Pane, StudyActions, StudyState } from '../../studyState/state.ts';
import { DROPS } from '../../ui/cautions.ts';
import { element, setText } from '../../ui/dom.ts';
import { labelled } from '../../ui/labelled.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { createSegmented } from '../../ui/segmented.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { drawnPart } from '../parts/drawnPart.ts';
import { CandidatesForm } from './candidatesForm.ts';
import { JobForm } from './jobForm.ts';
import { motionPlot } from './motionPlot.ts';
import { MoveListForm } from './moveListForm.ts';
import { createTitleField } from './titleField.ts';

/** What is to be done, and the candidate drives. */
export class JobPane implements Pane {
  readonly element: HTMLElement;
  readonly #said = element('p', { class: 'job-said', role: 'status' });
  readonly #caution = element(
    'p',
    { class: 'job-caution', hidden: true },
    element('b', {}, 'An axis that rises: '),
    DROPS,
  );
  readonly #example = element(
    'p',
    { class: 'job-example', hidden: true },
    element('b', {}, 'An example: '),
    'every value is invented. Type your own over it, and leave open what you do not need.',
  );
  readonly #title;
  readonly #units;
  readonly #form: JobForm;
  readonly #moveList: MoveListForm;
  readonly #plot;
  readonly #candidates: CandidatesForm;
  readonly #lower: HTMLElement;
  readonly #isNew = watchChanges();
  #state: StudyState | null = null;

  constructor(actions: StudyActions) {
    this.#title = createTitleField((text) => actions.nameJob(text));
    this.#units = createSegmented('Units', ['metric', 'inch'], (system) => {
      if (system !== this.#state?.units) actions.setUnits(system);
    });
    this.#form = new JobForm(actions, () => this.#arrange());
    this.#moveList = new MoveListForm(actions, () => this.#plot.refresh());
    this.#plot = drawnPart(element('div', { class: 'job-plot' }), (width) => this.#draw(width));
    this.#candidates = new CandidatesForm(actions);
    const motion = element(
      'section',
      { 'aria-labelledby': 'job-motion-title' },
      element('h3', { id: 'job-motion-title' }, 'Motion required'),
      element('div', { class: 'job-motion-parts' }, this.#plot.element, this.#moveList.element),
    );
    this.#lower = element('div', { class: 'job-lower' }, motion, this.#candidates.element);
    this.element = element(
      'div',
      { class: 'job-pane' },
      element('h2', { class: 'visually-hidden' }, 'Job'),
      element(
        'section',
        { class: 'job-head', 'aria-label': 'The job' },
        this.#title.element,
        labelled('Units', this.#units),
      ),
      this.#example,
      this.#said,
      this.#caution,
      this.#form.element,
      this.#lower,
    );
  }

  show(state: StudyState): void {
    const { study, units } = state;
    this.#state = state;
    if (!this.#isNew(study, units)) return;
    this.#title.show(study.job.title);
    if (this.#units.value !== units) this.#units.choose(units);
    setText(this.#said, unbroken(jobSentence(study.job, units)));
    this.#example.hidden = study.job !== DEFAULT_STUDY.job;
    this.#caution.hidden = study.job.values.inclination === 0;
    this.#form.show(state);
    this.#candidates.show(state);
  }

  setShown(shown: boolean): void {
    if (shown) this.#plot.refresh();
  }

  get #wantsList(): boolean {
    return this.#form.wanted.motion === 'move list';
  }

  #draw(width: number): Markup {
    if (!this.#state) return markup``;
    const { study, units } = this.#state;
    const asked = (this.#wantsList ? this.#moveList.typed : null) ?? motionAsked(study.job);
    return svg(motionPlot(asked, units, width));
  }

  /** Shows what depends on what is wanted, also before it is in force. */
  #arrange(): void {
    this.#moveList.element.hidden = !this.#wantsList;
    this.#lower.classList.toggle('has-list', this.#wantsList);
    if (this.#state && this.#wantsList) this.#moveList.show(this.#state, this.#form.wanted.travel);
    this.#plot.refresh();
  }
}

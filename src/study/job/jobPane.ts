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
import { markup } from '../../ui/markup.ts';
import { createSegmented } from '../../ui/segmented.ts';
import { drawnPart } from '../parts/drawnPart.ts';
import { CandidatesForm } from './candidatesForm.ts';
import { JobForm } from './jobForm.ts';
import { motionPlot } from './motionPlot.ts';
import { createMoveListForm } from './moveListForm.ts';
import { createTitleField } from './titleField.ts';

/** What is to be done, and which drives try it. */
export function createJobPane(actions: StudyActions): Pane {
  let state: StudyState | null = null;
  const isNew = watchChanges();
  const said = element('p', { class: 'job-said', role: 'status' });
  const caution = element(
    'p',
    { class: 'job-caution', hidden: true },
    element('b', {}, 'An axis that rises: '),
    DROPS,
  );
  const title = createTitleField((text) => actions.nameJob(text));
  const units = createSegmented('Units', ['metric', 'inch'], (system) => {
    if (system !== state?.units) actions.setUnits(system);
  });
  const form = new JobForm(actions, () => arrange());
  const moveList = createMoveListForm(actions, () => plot.refresh());
  const plot = drawnPart(element('div', { class: 'job-plot' }), (width) => {
    if (!state) return markup``;
    const wantsList = form.wanted.motion === 'move list';
    const asked = (wantsList ? moveList.typed : null) ?? motionAsked(state.study.job);
    return svg(motionPlot(asked, state.units, width));
  });
  const candidates = new CandidatesForm(actions);
  const motion = element(
    'section',
    { 'aria-labelledby': 'job-motion-title' },
    element('h3', { id: 'job-motion-title' }, 'Motion as it is asked for'),
    element('div', { class: 'job-motion-parts' }, plot.element, moveList.element),
  );

  const lower = element('div', { class: 'job-lower' }, motion, candidates.element);

  /** Shows what depends on what is wanted, also before it is in force. */
  function arrange(): void {
    const wantsList = form.wanted.motion === 'move list';
    moveList.element.hidden = !wantsList;
    lower.classList.toggle('has-list', wantsList);
    if (state && wantsList) moveList.show(state, form.wanted.travel);
    plot.refresh();
  }

  return {
    element: element(
      'div',
      { class: 'job-pane' },
      element(
        'section',
        { class: 'job-head', 'aria-label': 'The job' },
        title.element,
        labelled('Units', units),
      ),
      said,
      caution,
      form.element,
      lower,
    ),
    show(next) {
      state = next;
      if (!isNew(next.study, next.units)) return;
      title.show(next.study.job.title);
      if (units.value !== next.units) units.choose(next.units);
      setText(said, unbroken(jobSentence(next.study.job, next.units)));
      caution.hidden = next.study.job.values.inclination === 0;
      form.show(next);
      candidates.show(next);
    },
    setShown(shown) {
      if (shown) plot.refresh();
    },
  };
}

/** A number and its unit stay on one line. */
function unbroken(text: string): string {
  return text.replace(/(?<=\d) (?=\S)/g, '\u00a0');
}

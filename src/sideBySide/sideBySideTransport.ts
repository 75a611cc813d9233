import { button, element, setText } from '../ui/dom.ts';
import { keyOf } from '../ui/keys.ts';
import { fallsBehind, measuredTimeScaleText } from '../ui/transport/timeScale.ts';
import { createTimeScaleSlider, type TimeScaleSlider } from '../ui/transport/timeScaleSlider.ts';
import type { CandidatesRun } from './sideBySideRun.ts';

/** Less than this is lost by any start, s of the clock. */
const MIN_LOSS = 0.1;

export interface CandidatesTransport {
  readonly element: HTMLElement;
  readonly timeScale: TimeScaleSlider;
  /** Once per display refresh. */
  show(): void;
}

/** Run and pause, reset, how fast, how fast really, and back over the last seconds: for all candidates at once. */
export function createCandidatesTransport(run: CandidatesRun): CandidatesTransport {
  const runButton = button('Run', () => run.runOrPause(), {
    class: 'primary run',
    keys: keyOf('runOrPause'),
  });
  const state = element('span', { class: 'state' });
  const time = element('span', { class: 'time' });
  const timeScale = createTimeScaleSlider((asked) => run.clock.setTimeScale(asked));
  const slider = element('input', {
    type: 'range',
    class: 'candidates-scrub',
    step: 'any',
    'aria-label': 'Moment of the last seconds',
    title: 'Back over the last seconds (keys ← and →, with Shift in larger steps)',
    oninput: () => run.lookAt(slider.valueAsNumber),
  });
  const live = button('Live', () => run.followLive(), {
    title: 'Back to the present',
    keys: keyOf('live'),
  });
  const bar = element(
    'div',
    { class: 'transport candidates-transport', role: 'group', 'aria-label': 'Run of all candidates' },
    runButton,
    button('Reset all', () => run.reset(), {
      title: 'All candidates back to their start',
      keys: keyOf('reset'),
    }),
    element('div', { class: 'clock' }, state, time),
    timeScale.element,
    element('div', { class: 'candidates-look-back' }, slider, live),
  );

  function show(): void {
    const { clock, moment, stopped } = run;
    const running = clock.running && !stopped;
    setText(runButton, running ? 'Pause' : 'Run');
    setText(state, stateText(run, running));
    setText(time, `${run.time.toFixed(3)} s`);
    bar.setAttribute('data-state', stopped ? 'tripped' : running ? 'running' : 'paused');
    const behind = running && fallsBehind(clock.timeScale, clock.achieved) && clock.lost > MIN_LOSS;
    bar.classList.toggle('is-behind', behind);
    timeScale.showAchieved(running ? achievedText(clock.timeScale, clock.achieved, behind) : '');
    live.disabled = moment.live;
    showSlider();
  }

  function showSlider(): void {
    // The slider itself follows only while it rests: running, its end is the present.
    const { oldest, latest } = run;
    slider.min = String(oldest);
    slider.max = String(latest);
    slider.value = String(run.time);
    slider.disabled = latest <= oldest;
    slider.setAttribute('aria-valuetext', `${run.time.toFixed(3)} s`);
  }

  return {
    element: bar,
    timeScale,
    show,
  };
}

function stateText({ moment, latest, time, stopped }: CandidatesRun, running: boolean): string {
  if (!moment.live) return `${(latest - time).toFixed(3)} s back`;
  if (stopped) return 'All tripped';
  return running ? 'Running' : 'Paused';
}

function achievedText(asked: number, achieved: number, behind: boolean): string {
  const text = measuredTimeScaleText(achieved);
  if (!behind) return `runs ${text}`;
  return asked === 1 ? `Slower than real time: ${text}` : `Slower than asked for: ${text}`;
}

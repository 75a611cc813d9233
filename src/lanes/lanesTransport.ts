import { button, element, setText } from '../app/dom.ts';
import { keyOf } from '../app/keys.ts';
import { fallsBehind, measuredPaceWords } from '../app/pace.ts';
import { createPaceSlider, type PaceSlider } from '../app/paceSlider.ts';
import type { LanesRun } from './lanesRun.ts';

/** Less than this is lost by any start, s of the clock. */
const LEAST_LOSS = 0.1;

export interface LanesTransport {
  readonly element: HTMLElement;
  readonly pace: PaceSlider;
  /** Once per display refresh. */
  show(): void;
}

/** Run and pause, reset, how fast, how fast really, and back over the last seconds: for all lanes at once. */
export function createLanesTransport(run: LanesRun): LanesTransport {
  const runButton = button('Run', () => run.runOrPause(), {
    class: 'primary run',
    keys: keyOf('runOrPause'),
  });
  const state = element('span', { class: 'state' });
  const time = element('span', { class: 'time' });
  const pace = createPaceSlider((asked) => run.clock.setPace(asked));
  const slider = element('input', {
    type: 'range',
    class: 'lanes-scrub',
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
    { class: 'transport lanes-transport', role: 'group', 'aria-label': 'Run of all lanes' },
    runButton,
    button('Reset all', () => run.reset(), { title: 'All lanes back to their start', keys: keyOf('reset') }),
    element('div', { class: 'clock' }, state, time),
    pace.element,
    element('div', { class: 'lanes-look-back' }, slider, live),
  );

  function show(): void {
    const { clock, moment, stopped } = run;
    const running = clock.running && !stopped;
    setText(runButton, running ? 'Pause' : 'Run');
    setText(state, stateWords(run, running));
    setText(time, `${run.time.toFixed(3)} s`);
    bar.setAttribute('data-state', stopped ? 'tripped' : running ? 'running' : 'paused');
    const behind = running && fallsBehind(clock.pace, clock.achieved) && clock.lost > LEAST_LOSS;
    bar.classList.toggle('is-behind', behind);
    pace.showAchieved(running ? achievedWords(clock.pace, clock.achieved, behind) : '');
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
    pace,
    show,
  };
}

function stateWords({ moment, latest, time, stopped }: LanesRun, running: boolean): string {
  if (!moment.live) return `${(latest - time).toFixed(3)} s back`;
  if (stopped) return 'All tripped';
  return running ? 'Running' : 'Paused';
}

function achievedWords(asked: number, achieved: number, behind: boolean): string {
  const words = measuredPaceWords(achieved);
  if (!behind) return `runs ${words}`;
  return asked === 1 ? `Slower than real time: ${words}` : `Slower than asked for: ${words}`;
}

import { button, element } from '../ui/dom.ts';
import { keyOf } from '../ui/keys.ts';
import { SLOW_MOTION_LABEL, SLOW_MOTION_TITLE } from '../ui/transport/slowMotionText.ts';
import { Transport } from '../ui/transport/transport.ts';
import type { CandidatesRun } from './sideBySideRun.ts';

/** The transport of all candidates at once, and the way back over the last seconds. */
export class CandidatesTransport {
  readonly element: HTMLElement;
  readonly #run: CandidatesRun;
  readonly #transport: Transport;
  readonly #slider: HTMLInputElement;
  readonly #live: HTMLButtonElement;

  constructor(run: CandidatesRun) {
    this.#run = run;
    this.#slider = element('input', {
      type: 'range',
      class: 'candidates-scrub',
      step: 'any',
      'aria-label': 'Time within the last seconds',
      title: 'Back over the last seconds (keys ← and →, with Shift in larger steps)',
      oninput: () => run.lookAt(this.#slider.valueAsNumber),
    });
    this.#live = button('Live', () => run.followLive(), {
      title: 'Back to the present',
      keys: keyOf('live'),
    });
    const slow = element('input', {
      type: 'checkbox',
      onchange: () => run.setSlowMotion(slow.checked),
    });
    this.#transport = new Transport({
      label: 'Run of all candidates',
      class: 'candidates-transport',
      runOrPause: () => run.runOrPause(),
      reset: {
        label: 'Reset all',
        title: 'All candidates back to the start',
        action: () => run.reset(),
      },
      onTimeScale: (asked) => run.clock.setTimeScale(asked),
      more: [
        element(
          'label',
          {
            class: 'candidates-slow',
            title: SLOW_MOTION_TITLE,
          },
          slow,
          SLOW_MOTION_LABEL,
        ),
        element('div', { class: 'candidates-look-back' }, this.#slider, this.#live),
      ],
    });
    this.element = this.#transport.element;
  }

  changeTimeScale(by: -1 | 0 | 1): void {
    this.#transport.changeTimeScale(by);
  }

  /** Once per display refresh. */
  show(): void {
    const { clock, moment, state, time } = this.#run;
    this.#transport.show({
      state,
      stateText: stateText(this.#run, state),
      timeText: `${time.toFixed(3)} s`,
      asked: clock.timeScale,
      achieved: clock.achieved,
      lost: clock.lost,
      isSlow: clock.isSlow,
      engine: this.#run.engine,
    });
    this.#live.disabled = moment.live;
    this.#showSlider();
  }

  /** The slider itself follows only while it rests: running, its end is the present. */
  #showSlider(): void {
    const { oldest, latest, time } = this.#run;
    this.#slider.min = String(oldest);
    this.#slider.max = String(latest);
    this.#slider.value = String(time);
    this.#slider.disabled = latest <= oldest;
    this.#slider.setAttribute('aria-valuetext', `${time.toFixed(3)} s`);
  }
}

const STATES = { paused: 'Paused', running: 'Running', tripped: 'All tripped' };

function stateText({ moment, latest, time }: CandidatesRun, state: keyof typeof STATES): string {
  return moment.live ? STATES[state] : `${(latest - time).toFixed(3)} s back`;
}

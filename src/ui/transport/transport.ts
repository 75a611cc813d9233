import type { AxisStatus, Engine } from '../../../shared/protocol/axis.ts';
import { button, element, setAttribute, setText } from '../dom.ts';
import { keyOf } from '../keys.ts';
import { fallsBehind, measuredTimeScaleText } from './timeScale.ts';
import { TimeScaleSlider } from './timeScaleSlider.ts';

interface TransportOptions {
  /** What it runs, for a screen reader. */
  readonly label: string;
  readonly class?: string;
  runOrPause(): void;
  readonly reset: { readonly label: string; readonly title: string; readonly action: () => void };
  onTimeScale(timeScale: number): void;
  /** Between Run and Reset. */
  readonly steps?: readonly HTMLElement[];
  /** At the end. */
  readonly more?: readonly HTMLElement[];
}

interface TransportStatus {
  readonly state: AxisStatus['state'];
  /** The state, and the simulated time, in words. */
  readonly stateText: string;
  readonly timeText: string;
  /** Simulated seconds per second, asked for and achieved, and wall-clock seconds that could not be kept up with. */
  readonly asked: number;
  readonly achieved: number;
  readonly lost: number;
  /** In slow motion because of an event. */
  readonly isSlow: boolean;
  readonly engine: Engine;
}

/** What integrates the plant: in short beside the pace, if it is not the usual engine, and in a tooltip. */
const ENGINES: Readonly<Record<Engine, readonly [short: string, title: string]>> = {
  odex: ['', 'Integrated with error control (engine odex)'],
  batch: [
    'fixed steps',
    'Integrated in fixed steps (engine batch), because real time could not be held with error control. The table position stays within the same 5 nm or 0.1 % of the peak error. A saved session records at which period the engine changed.',
  ],
};

/** Run and pause, steps, reset, how fast, and how fast really: of the bench, or of all candidates at once. */
export class Transport {
  readonly element: HTMLElement;
  readonly #run: HTMLButtonElement;
  readonly #timeScale: TimeScaleSlider;
  readonly #state = element('span', { class: 'state' });
  readonly #time = element('span', { class: 'time' });

  constructor({
    label,
    runOrPause,
    reset,
    onTimeScale,
    steps = [],
    more = [],
    ...options
  }: TransportOptions) {
    this.#run = button('Run', runOrPause, { class: 'primary run', keys: keyOf('runOrPause') });
    this.#timeScale = new TimeScaleSlider(onTimeScale);
    this.element = element(
      'div',
      {
        class: `transport ${options.class ?? ''}`.trim(),
        role: 'group',
        'aria-label': label,
        // After a click of the mouse the space bar means run and pause again, not the button that was clicked.
        onclick: (event) => {
          const { target } = event;
          const byMouse = event instanceof MouseEvent && event.detail > 0;
          if (byMouse && target instanceof HTMLButtonElement) target.blur();
        },
      },
      this.#run,
      ...steps,
      button(reset.label, reset.action, { title: reset.title, keys: keyOf('reset') }),
      element('div', { class: 'clock' }, this.#state, this.#time),
      this.#timeScale.element,
      ...more,
    );
  }

  show({ state, stateText, timeText, asked, achieved, lost, isSlow, engine }: TransportStatus): void {
    const running = state === 'running';
    setText(this.#run, running ? 'Pause' : 'Run');
    setText(this.#state, stateText);
    setText(this.#time, timeText);
    setAttribute(this.element, 'data-state', state);
    const behind = running && !isSlow && fallsBehind(asked, achieved, lost);
    this.element.classList.toggle('is-behind', behind);
    const text = measuredTimeScaleText(achieved);
    const how = isSlow ? 'slow motion at' : 'running at';
    const achievedText = behind ? `${text}, ${lost.toFixed(1)} s lost` : `${how} ${text}`;
    this.#timeScale.showAchieved(running ? achievedText : '');
    this.#timeScale.showEngine(...ENGINES[engine]);
  }

  /** No simulation is there to run. */
  showStopped(): void {
    setText(this.#run, 'Run');
    setText(this.#state, 'Stopped');
    this.element.setAttribute('data-state', 'stopped');
    this.element.classList.remove('is-behind');
    this.#timeScale.showAchieved('');
  }

  /** Steps along the time scales; 0 goes to real time. */
  changeTimeScale(by: -1 | 0 | 1): void {
    this.#timeScale.change(by);
  }
}

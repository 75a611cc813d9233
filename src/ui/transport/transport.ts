import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { AxisStatus } from '../../../shared/protocol/axis.ts';
import { button, element, setText } from '../dom.ts';
import { type Actions, keyOf } from '../keys.ts';
import { fallsBehind, measuredTimeScaleText } from './timeScale.ts';
import { createTimeScaleSlider } from './timeScaleSlider.ts';

export interface Transport {
  readonly element: HTMLElement;
  show(status: AxisStatus, drive: Parameters['drive']): void;
  /** Steps along the paces; 0 goes to real time. */
  changeTimeScale(by: -1 | 0 | 1): void;
}

const STATES = { paused: 'Paused', running: 'Running', tripped: 'Tripped' };

const DRIVES = { on: '', off: ', drive off', shorted: ', shorted' };

/** Run and pause, single steps, reset, how fast, and how fast really. */
export function createTransport(actions: Actions, onTimeScale: (timeScale: number) => void): Transport {
  const run = button('Run', actions.runOrPause, { class: 'primary run', keys: keyOf('runOrPause') });
  const timeScale = createTimeScaleSlider(onTimeScale);
  const state = element('span', { class: 'state' });
  const time = element('span', { class: 'time' });

  const bar = element(
    'div',
    { class: 'transport', role: 'group', 'aria-label': 'Run' },
    run,
    button('Tick', actions.tick, { title: 'One period of the current loop', keys: keyOf('tick') }),
    button('Move', actions.move, { title: 'One move, then pause', keys: keyOf('move') }),
    button('Reset', actions.reset, { title: 'Back to the start of the scene', keys: keyOf('reset') }),
    element('div', { class: 'clock' }, state, time),
    timeScale.element,
  );

  return {
    element: bar,
    show(status, drive) {
      const running = status.state === 'running';
      setText(run, running ? 'Pause' : 'Run');
      setText(state, STATES[status.state] + DRIVES[drive]);
      setText(time, `${status.time.toFixed(5)} s`);
      bar.setAttribute('data-state', status.state);
      const behind =
        running && fallsBehind(status.timeScale, status.achievedTimeScale) && status.lostTime > 0;
      bar.classList.toggle('is-behind', behind);
      timeScale.showAchieved(running ? achievedText(status, behind) : '');
    },
    changeTimeScale: timeScale.change,
  };
}

function achievedText({ achievedTimeScale, lostTime }: AxisStatus, behind: boolean): string {
  const runs = `runs ${measuredTimeScaleText(achievedTimeScale)}`;
  return behind ? `${runs}, ${lostTime.toFixed(1)} s lost` : runs;
}

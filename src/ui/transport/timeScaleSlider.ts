import { element, setText } from '../dom.ts';
import { REAL_TIME, TIME_SCALES, timeScaleText } from './timeScale.ts';

export interface TimeScaleSlider {
  readonly element: HTMLElement;
  /** Steps along the paces; 0 goes to real time. */
  change(by: -1 | 0 | 1): void;
  /** What is achieved, in words. */
  showAchieved(text: string): void;
}

/** How fast it is to go, and how fast it really goes. Real time is asked for at once. */
export function createTimeScaleSlider(onTimeScale: (timeScale: number) => void): TimeScaleSlider {
  const slider = element('input', {
    type: 'range',
    min: 0,
    max: TIME_SCALES.length - 1,
    value: REAL_TIME,
    'aria-label': 'Pace',
    oninput: () => choose(slider.valueAsNumber),
  });
  const asked = element('span', { class: 'pace-asked' });
  const achieved = element('span', { class: 'pace-achieved' });

  function choose(index: number): void {
    const timeScale = TIME_SCALES[index]!;
    slider.value = String(index);
    slider.setAttribute('aria-valuetext', timeScaleText(timeScale));
    setText(asked, timeScaleText(timeScale));
    onTimeScale(timeScale);
  }

  choose(REAL_TIME);
  return {
    element: element(
      'div',
      { class: 'pace' },
      slider,
      element('div', { class: 'pace-words' }, asked, achieved),
    ),
    change(by) {
      const at = by === 0 ? REAL_TIME : slider.valueAsNumber + by;
      choose(Math.min(TIME_SCALES.length - 1, Math.max(0, at)));
    },
    showAchieved: (text) => setText(achieved, text),
  };
}

import { ranged } from '../../shared/core/format.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import {
  isShaped,
  residualVibration,
  type Shaping,
  shaperImpulses,
  shapingTimes,
} from '../../shared/motion/shaping.ts';
import { button, element, setText } from '../ui/dom.ts';

/** How far the resonance may be off its expected frequency in the note. */
const OFF = 0.1;

/** What the shaping of the command costs and what it is worth, and a way to set it for the loop. */
export class ShapingNote {
  readonly element: HTMLElement;
  readonly #text = element('p');

  constructor(shapeForLoop: () => void) {
    this.element = element(
      'section',
      { class: 'shaping-note', 'aria-label': 'What the shaping costs' },
      this.#text,
      button('Shape for the loop’s resonance', shapeForLoop, {
        class: 'panel-wide',
        title: 'Sets the input shaper to the least damped oscillation of the closed loop',
      }),
    );
  }

  show(p: Parameters): void {
    setText(this.#text, shapingText(p));
  }
}

/** 'Fourth-order profile. Each move takes 40.0 ms longer: jerk ramp 20.0 ms, input shaper 20.0 ms. …' */
export function shapingText(p: Shaping & Pick<Parameters, 'acceleration' | 'jerk'>): string {
  const order = p.jerkRamp > 0 ? 'Fourth' : 'Third';
  const jerkTime = `${order}-order profile, acceleration reached in ${ranged(p.acceleration / p.jerk + p.jerkRamp, 's')}.`;
  return [jerkTime, costText(p), ...(p.shaper === 'none' ? [] : [worthText(p)])].join(' ');
}

function costText(p: Shaping): string {
  if (!isShaped(p)) return 'No shaping: moves take no longer than their limits require.';
  const times = shapingTimes(p);
  const parts = (
    [
      ['jerk ramp', times.jerkRamp],
      ['input shaper', times.shaper],
      ['setpoint filter, one time constant,', times.setpointFilter],
    ] as const
  ).filter(([, time]) => time > 0);
  const total = parts.reduce((sum, [, time]) => sum + time, 0);
  const list = parts.map(([label, time]) => `${label} ${ranged(time, 's')}`).join(', ');
  return parts.length > 1
    ? `Each move takes ${ranged(total, 's')} longer: ${list}.`
    : `Each move takes longer: ${list}.`;
}

function worthText(p: Shaping): string {
  const left = (factor: number) =>
    residualVibration(shaperImpulses(p), 2 * Math.PI * factor * p.shaperFrequency, p.shaperDamping);
  const worst = Math.max(left(1 - OFF), left(1 + OFF));
  return `A resonance ${100 * OFF} % off its frequency keeps ${(100 * worst).toPrecision(2)} % of its vibration.`;
}

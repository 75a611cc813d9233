import type { Unit } from '../../../shared/core/units.ts';
import { labelling, labelText, unitText } from '../labelling.ts';
import { linearScale } from '../scale.ts';
import { stepAtLeast, tickRange } from '../ticks.ts';

/** Windows longer than this are read in minutes, s. */
const MINUTES_FROM = 300;

/** Ticks of simulated time, with as many labels as fit. Places are shares of the width. */
export class TimeAxis {
  #scale = linearScale(0, 1, 0, 1);
  #step = 1;
  #unit: Unit = 's';
  #labels = labelling(0, 1, 1, 's');

  /** `max`: how many labels have room between `from` and `to`, s. */
  fit(from: number, to: number, max: number): void {
    this.#scale = linearScale(from, to, 0, 1);
    this.#unit = to - from > MINUTES_FROM ? 'min' : 's';
    const size = this.#unit === 'min' ? 60 : 1;
    this.#step = stepAtLeast((to - from) / size / Math.max(1, max)) * size;
    this.#labels = labelling(from, to, this.#step, this.#unit);
  }

  /** The unit, and from what moment it counts if not from the start of the run. */
  get title(): string {
    return unitText(this.#labels, this.#unit);
  }

  /** Every tick as a share of the width with its label. */
  eachTick(draw: (fraction: number, text: string) => void): void {
    const { from, to } = this.#scale;
    const [first, last] = tickRange(from, to, this.#step);
    for (let k = first; k <= last; k++) {
      const time = k * this.#step;
      draw(this.#scale.at(time), labelText(time, this.#labels));
    }
  }

  /** The time at a share of the width, finer than the ticks. */
  moment(fraction: number): string {
    return `${labelText(this.#scale.valueAt(fraction), this.#labels, 2)} ${this.title}`;
  }
}

import type { Unit } from '../../../shared/core/units.ts';
import { labelling, labelText, unitText } from '../labelling.ts';
import { stepAtLeast, tickRange } from '../ticks.ts';

/** Windows longer than this are read in minutes, s. */
const MINUTES_FROM = 300;

/** Ticks of simulated time, with as many labels as fit. */
export class TimeAxis {
  private from = 0;
  private to = 1;
  private step = 1;
  private unit: Unit = 's';
  private labels = labelling(0, 1, 1, 's');

  /** `most`: how many labels have room between `from` and `to`, s. */
  fit(from: number, to: number, max: number): void {
    this.from = from;
    this.to = to;
    this.unit = to - from > MINUTES_FROM ? 'min' : 's';
    const size = this.unit === 'min' ? 60 : 1;
    this.step = stepAtLeast((to - from) / size / Math.max(1, max)) * size;
    this.labels = labelling(from, to, this.step, this.unit);
  }

  /** The unit, and from what moment it counts if not from the start of the run. */
  get title(): string {
    return unitText(this.labels, this.unit);
  }

  /** Every tick as a fraction of the width with its label. */
  eachTick(draw: (fraction: number, text: string) => void): void {
    const [first, last] = tickRange(this.from, this.to, this.step);
    for (let k = first; k <= last; k++)
      draw((k * this.step - this.from) / (this.to - this.from), labelText(k * this.step, this.labels));
  }

  /** The time at a fraction of the width, finer than the ticks. */
  moment(fraction: number): string {
    const time = this.from + fraction * (this.to - this.from);
    return `${labelText(time, this.labels, 2)} ${this.title}`;
  }
}
